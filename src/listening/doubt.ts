/** What speaks against telling that a note was missing or another: that it may have been played, and was not heard. */
import type { Alignment } from './align.ts';
import { noteOdds } from './event.ts';

/**
 * A note may have been played unheard where the time between its neighbours is so many steps (one more with another note
 * among them), or where something was heard that is no note in the best path and has these log odds of being it: fewer are
 * enough where the reading is not plain. After the last note that was heard, anything speaks for another so many steps
 * later. (Chosen on the guitars that `npm run listen` names as tuned on.)
 */
export const DOUBT = { gap: 1.55, odds: -6, plainOdds: -3.5, plain: 2, later: 0.5 };
/** Seconds within which two events may be one. */
const APART = 0.04;

/** Seconds between which note `i` was played if it was, as its neighbours were heard. */
function placeOf({ notes, candidates }: Alignment, i: number): { from: number; to: number } {
  const heard = ({ event }: { event: number }) => event >= 0;
  const before = notes.slice(0, i).findLast(heard);
  const after = notes.slice(i + 1).find(heard);
  return {
    from: before ? candidates[before.event]!.event.time : -Infinity,
    to: after ? candidates[after.event]!.event.time : Infinity,
  };
}

/** The lower median of the times from note to note, in seconds; infinite where none is known. */
function stepOf({ notes, candidates }: Alignment): number {
  const times = notes.map(({ event }) => candidates[event]?.event.time ?? Infinity);
  const steps = times
    .slice(1)
    .map((time, i) => time - times[i]!)
    .filter((step) => step > 0 && step < Infinity)
    .toSorted((a, b) => a - b);
  return steps[(steps.length - 1) >> 1] ?? Infinity;
}

/** Whether note `i`, read as missing or another, may have been played without being heard. */
export function doubted(alignment: Alignment, midi: number, i: number): boolean {
  const { from, to } = placeOf(alignment, i);
  const step = stepOf(alignment);
  const { event: own, margin } = alignment.notes[i]!;
  const [left, last] = [own < 0, to === Infinity];
  // Another note in its place took a step of its own.
  const gap = left ? DOUBT.gap : DOUBT.gap + 1;
  if (!last && from > -Infinity && to - from > gap * step) return true;
  // How long a step is, later notes will tell.
  const goesOn = alignment.notes.slice(i + 1).some(({ label }) => label === 'open');
  if (left && !last && step === Infinity && goesOn) return true;
  const least = margin < DOUBT.plain ? DOUBT.odds : DOUBT.plainOdds;
  return alignment.candidates.some(({ event }, t) => {
    if (t < alignment.begins || alignment.events[t]!.label !== 'ignored') return false;
    if (event.time < from + APART || event.time > to - APART) return false;
    return (
      (left && last && event.time > from + DOUBT.later * step) || noteOdds(event, midi) > least
    );
  });
}

/** The median log odds of the notes that were heard right: how clearly this guitar is heard, here and now. */
export function clearness({ notes, candidates }: Alignment, asked: readonly number[]): number {
  const odds = notes
    .flatMap(({ label, event }, i) =>
      label === 'right' ? [noteOdds(candidates[event]!.event, asked[i]!)] : [],
    )
    .toSorted((a, b) => a - b);
  return odds[odds.length >> 1] ?? -Infinity;
}
