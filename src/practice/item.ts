import { isKindOf, isPhraseKind, type KindName } from '../decks/kinds.ts';
import type { Instrument } from '../neck/instrument.ts';
import type { Size } from '../theory/chord.ts';
import type { Key } from '../theory/key.ts';

/** One thing to be remembered. Its id says what it is, is stable, and does not name a deck. */
export interface Item {
  /** `spot:Bb major:2:triad:guitar:5-4:1-5` */
  readonly id: string;
  readonly kind: KindName;
  /** Of seven notes. */
  readonly key: Key;
  /** The degree it stands on, 1 to 7; of what stands on none, 1 (see `degreeOf`). */
  readonly degree: number;
  /** The size of the chord that stands on it. */
  readonly size: Size;
  /** The string set, `5-4`, or empty where strings do not matter. */
  readonly strings: string;
  /** The lowest and the highest fret it lies on; left out where it lies nowhere on the neck. */
  readonly frets?: readonly [number, number];
  /** Of a kind that is drilled on strings and from phrases: whether it is from a phrase, with frets of its own. */
  readonly ofPhrase?: boolean;
  /** What the deck that it is from is played on; without one, what the id names: its usual length, right-handed. */
  readonly instrument?: Instrument;
  /** How hard the deck says it is, 1 (easiest) to 5; 3 where it says nothing. */
  readonly mark?: number;
  /** Which drill of the deck it is from, the first of them 0: new items come in the drills' order. */
  readonly drill?: number;
  /** The id of an item that comes before it: as long as that one is not known, this one is not begun. */
  readonly after?: string;
}

/** The degree that an item stands on; null where it stands on none, as what asks for time alone. */
export function itemDegree({ kind, degree }: Pick<Item, 'kind' | 'degree'>): number | null {
  return isKindOf('time', kind) ? null : degree;
}

/** Whether an item is from a phrase. */
export function isOfPhrase({ kind, ofPhrase = false }: Pick<Item, 'kind' | 'ofPhrase'>): boolean {
  return ofPhrase || isPhraseKind(kind);
}

/** Right or not, and what it was taken for. */
export interface Verdict {
  readonly right: boolean;
  /** The wrong answer given, in the words of `data-answer`; null where right or where it is no single thing. */
  readonly takenFor: string | null;
  /** Too near the mark to be called right or wrong, or too little to judge by: it is asked again, and not stored. */
  readonly near?: true;
}
