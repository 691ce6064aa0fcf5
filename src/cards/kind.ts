import type { ComponentType } from 'preact';
import type { Deck, Drill, KindName } from '../decks/deck.ts';
import type { Instrument } from '../neck/instrument.ts';
import type { NeckDot } from '../parts/Neck.tsx';
import type { Item, Verdict } from '../practice/item.ts';
import type { Playing } from '../sound/index.ts';
import type { KeySound } from '../sound/key.ts';
import type { Sounding } from '../sound/sounding.ts';
import type { Key } from '../theory/key.ts';
import type { Naming } from '../theory/naming.ts';

/** One question about an item at one moment. Same item, same seed, same card, on every machine. */
export interface Card {
  readonly item: Item;
  readonly seed: number;
  readonly key: Key;
  readonly instrument: Instrument;
}

/** Why the verdict is what it is: words, what to show, what to sound. */
export interface Explanation {
  /** A few words that take the question's place: `ii, not IV`. */
  readonly title: string;
  /** One sentence. */
  readonly sentence: string;
  /** What is worth adding, or empty. */
  readonly detail: string;
  readonly dots: readonly NeckDot[];
  /** The right answer, sounded. */
  readonly sound: Sounding;
  /** What was answered instead, sounded; null where that is no single thing. */
  readonly otherSound: Sounding | null;
}

/** What the student has chosen to see. */
export interface Shown {
  readonly naming: Naming;
  /** Chord names beside the numerals. */
  readonly chordNames: boolean;
  /** How a key is made heard. */
  readonly keySound: KeySound;
}

/** What a card's screen is given. */
export interface FaceProps<C extends Card = Card> {
  readonly card: C;
  /** Both null until the verdict is shown. */
  readonly verdict: Verdict | null;
  readonly explanation: Explanation | null;
  readonly shown: Shown;
  /** To be called once, with the answer in the words of `data-answer` and the taps it took. */
  answer(answer: string, taps: number): void;
  /** Told of what is played of the card itself, so that listening is not counted as thinking. */
  sounded(playing: Playing): void;
  /** Goes on to the next card. */
  next(): void;
}

/** A kind of card: five parts, one folder. */
export interface Kind<C extends Card = Card> {
  readonly name: KindName;
  /** Whether it asks the ear: then it waits where there is no sound, and sounds its own answer. */
  readonly heard: boolean;
  /** Every item that the drill covers, in a stable order without doubles. */
  items(deck: Deck, drill: Drill): Item[];
  /** The item that an id names, or null where it is no id of this kind. */
  item(id: string): Item | null;
  ask(item: Item, seed: number): C;
  judge(card: C, answer: string): Verdict;
  explain(card: C, verdict: Verdict, answer: string, naming: Naming): Explanation;
  readonly Face: ComponentType<FaceProps<C>>;
}
