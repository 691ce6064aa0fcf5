import type { ComponentType } from 'preact';
import type { Deck, Drill, KindName } from '../decks/deck.ts';
import type { Instrument } from '../neck/instrument.ts';
import type { Place } from '../neck/place.ts';
import type { Item, Verdict } from '../practice/item.ts';
import type { Sounding } from '../sound/sounding.ts';
import type { Key } from '../theory/key.ts';
import type { Member } from '../theory/chord.ts';
import type { Naming } from '../theory/naming.ts';
import type { NoteName } from '../theory/note.ts';

/** One question about an item at one moment. Same item, same seed, same card, on every machine. */
export interface Card {
  readonly item: Item;
  readonly seed: number;
  readonly key: Key;
  readonly instrument: Instrument;
}

/** A dot on the neck that says which member of the chord it is. */
export interface Dot extends Place {
  readonly member: Member;
  readonly note: NoteName;
  /** The scale degree of the note in the card's key, 1 to 7. */
  readonly degree: number;
}

/** Why the verdict is what it is: words, what to show, what to sound. */
export interface Explanation {
  /** A few words instead of the question: `ii, not IV`. */
  readonly title: string;
  /** One sentence. */
  readonly sentence: string;
  /** What is worth adding, or empty. */
  readonly detail: string;
  readonly dots: readonly Dot[];
  /** The right answer sounded; then, where something else was answered, that too. */
  readonly sound: Sounding;
  readonly takenFor: Sounding | null;
}

/** What a card's screen is given. */
export interface FaceProps<C extends Card> {
  readonly card: C;
  /** Null until the verdict is shown. */
  readonly verdict: Verdict | null;
  readonly explanation: Explanation | null;
  readonly shown: Shown;
  /** Call once, with the answer in the words of `data-answer`. */
  answer(answer: string, taps: number): void;
  /** Tell how long the card itself sounded, ms, so that listening is not counted as thinking. */
  sounded(ms: number): void;
}

/** What the student has chosen to see. */
export interface Shown {
  readonly naming: Naming;
  /** Chord names beside the numerals. */
  readonly chordNames: boolean;
}

/** A kind of card: five parts, one folder. */
export interface Kind<C extends Card = Card> {
  readonly name: KindName;
  /** Every item that the drill covers, in a stable order without doubles. */
  items(deck: Deck, drill: Drill): Item[];
  /** The item that an id of this kind names, or null. Inverts `item.id`. */
  item(id: string): Item | null;
  ask(item: Item, seed: number): C;
  judge(card: C, answer: string): Verdict;
  explain(card: C, verdict: Verdict, naming: Naming): Explanation;
  readonly Face: ComponentType<FaceProps<C>>;
}
