/** What was sure of the last card of each figure, kept for the report: the log knows right and wrong alone. */
import type { Card } from '../../cards/kind.ts';
import type { PulseCard } from '../../cards/pulse/ask.ts';
import { judgementOf } from '../../cards/pulse/judge.ts';
import { timingId, type FigureTiming } from '../../practice/timeTold.ts';
import { saveTiming } from '../../store/timings.ts';
import { reportingTrouble } from '../state.ts';

/** What is sure of an answer; null where too little was tapped to say anything. */
export function sureTimingOf(card: PulseCard, answer: string): FigureTiming | null {
  const { evenness, drift, shape } = judgementOf(card, answer);
  if (!evenness) return null;
  const bent = (shape ?? []).filter(({ told }) => told);
  const [worst] = bent.toSorted((a, b) => Math.abs(b.late) - Math.abs(a.late));
  return {
    spread: evenness.fraction,
    drift: drift?.told ? drift.slope : null,
    limps: worst ? { place: worst.place, late: worst.late } : null,
  };
}

/** Keeps it of a card in time, in place of what was known of its figure before. */
export async function keepTiming(card: Card, answer: string | null): Promise<void> {
  if (answer === null || !isInTime(card)) return;
  const timing = sureTimingOf(card, answer);
  if (timing) await reportingTrouble(saveTiming(timingId(card.item.id), timing));
}

const isInTime = (card: Card): card is PulseCard => card.item.kind === 'pulse';
