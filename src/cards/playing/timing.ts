import { phraseFigure } from '../../theory/timing/figure.ts';
import { ALLOWED, judgedMatch, type TimeJudgement } from '../../theory/timing/judge.ts';
import { timePlan } from '../../theory/timing/plan.ts';
import { median } from '../../theory/timing/median.ts';
import { stepsOf } from '../../theory/timing/steps.ts';
import type { PlayedAnswer } from './answer.ts';
import type { PlayingCard } from './card.ts';

/** Standard deviation of an onset's error, in seconds: in quiet 95 % of them are within 6 ms (`npm run listen`). */
const ONSET_ERROR = 0.003;

/** A step so many times as long as the player's others is late whatever the rest was like, of so many steps at least. */
const LATE = { times: 1.5, of: 3 } as const;

/** How even a line was, where it was asked at a tempo and enough of it was heard. */
export interface Time extends Pick<TimeJudgement, 'verdict' | 'evenness' | 'tempo'> {
  /** Notes that came late after the one before, by their index. */
  readonly late: readonly number[];
}

/** Null at leisure, and where fewer than two notes in a row were heard. */
export function timeOf({ notes, tempo }: PlayingCard, { notes: heard }: PlayedAnswer): Time | null {
  if (tempo === null || notes.length < 2) return null;
  const timed = heard
    .slice(0, notes.length)
    .flatMap((note, slot) =>
      note.is === 'heard' && note.time !== null ? [{ slot, time: note.time }] : [],
    );
  const plan = timePlan(phraseFigure({ notes }, { taps: notes.length }), tempo, null);
  const slots = new Set(timed.map(({ slot }) => slot));
  const match = {
    pairs: timed.map(({ slot }, tap) => ({ slot, tap })),
    missing: notes.flatMap((_, slot) => (slots.has(slot) ? [] : [slot])),
    extra: [],
    outside: [],
  };
  const times = timed.map(({ time }) => time);
  const judged = judgedMatch(match, times, plan, { allowed: ALLOWED[0], error: ONSET_ERROR });
  if (judged.tempo === null) return null;
  const { verdict, evenness, tempo: played } = judged;
  return { verdict, evenness, tempo: played, late: lateOf(judged) };
}

function lateOf({ onsets, worst }: TimeJudgement): number[] {
  const steps = stepsOf(onsets);
  const usual = median(steps.map(({ ratio }) => ratio));
  const long = steps.filter(({ ratio }) => ratio > LATE.times * usual).map(({ to }) => to.slot);
  const late = worst.filter((tap) => tap.late > 0).map(({ slot }) => slot);
  return [...new Set([...(steps.length >= LATE.of ? long : []), ...late])].toSorted(
    (a, b) => a - b,
  );
}
