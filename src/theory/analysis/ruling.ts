import type { Chord } from '../chord.ts';
import type { Embellishment } from './embellishmentNames.ts';

/**
 * What somebody who knows better has decided: that these notes, `from` up to and not including `to`, are one group and,
 * if it is said, of which chord; that the group with this note in it is of this chord; or what this note is in its group:
 * an embellishing tone of this kind, or with null one of the chord's.
 */
export type Ruling =
  | { readonly span: readonly [from: number, to: number]; readonly chord?: Chord }
  | { readonly note: number; readonly chord: Chord }
  | ToneRuling;

/** What a note is in its group. Where its group's chord is ruled too and has no such note, the chord's ruling stands. */
interface ToneRuling {
  readonly note: number;
  readonly embellishment: Embellishment | null;
  readonly chord?: never;
}

export function isToneRuling(ruling: Ruling): ruling is ToneRuling {
  return 'embellishment' in ruling;
}

/** The notes that a ruling speaks of. */
export function spanOf(ruling: Ruling): readonly [number, number] {
  return 'span' in ruling ? ruling.span : [ruling.note, ruling.note + 1];
}
