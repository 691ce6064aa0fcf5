import type { MelodyNote } from './melody.ts';
import * as W from './weights.ts';
import type { Embellishment } from './embellishmentNames.ts';

/** Where in its group a note stands, as far as its kind depends on it. */
export type Standing = 'first' | 'middle' | 'last';

/**
 * What kind of embellishing tone a note is that is none of its chord's, or null where it is none: it leaps in and out.
 * @param chordal whether a note of the melody, by its index, is one of the chord's
 */
export function embellishment(
  melody: readonly MelodyNote[],
  i: number,
  standing: Standing,
  chordal: (index: number) => boolean,
): Embellishment | null {
  const { into, out } = melody[i]!;
  // What is reached or left across a group's edge may come from or go to any chord.
  const prepared = standing === 'first' || chordal(i - 1);
  const resolved = standing === 'last' || chordal(i + 1);
  if (standing === 'last' && out?.semitones === 0) return 'anticipation';
  if (standing === 'first' && into?.semitones === 0 && out?.isStep && resolved) return 'suspension';
  if (into?.isStep && out?.isStep) {
    if (into.semitones + out.semitones === 0 && prepared && resolved) return 'neighbour';
    if (Math.sign(into.semitones) === Math.sign(out.semitones) && (prepared || resolved))
      return 'passing';
  }
  if ((melody[i - 2]?.turns && chordal(i - 2)) || (melody[i - 1]?.turns && chordal(i - 1)))
    return 'double neighbour';
  if (out?.isStep && into?.semitones !== 0 && !into?.isStep && resolved) return 'appoggiatura';
  if (into?.isStep && out && !out.isStep && into.semitones * out.semitones < 0 && prepared)
    return 'escape';
  return null;
}

/** What it costs to read a note as an embellishing tone of this kind; with null, as a foreign one. */
export function embellishmentCost(
  { weight, onBeat, length, out }: MelodyNote,
  kind: Embellishment | null,
): number {
  const cost = (kind === null ? W.foreign : W.embellishment[kind]) * weight;
  if (kind !== 'appoggiatura') return cost;
  const { offBeat, long, upward } = W.appoggiatura;
  return (
    cost +
    (onBeat ? 0 : offBeat) +
    long * Math.max(0, length - 0.5) +
    (out!.semitones > 0 ? upward : 0)
  );
}
