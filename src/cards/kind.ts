import type { VNode } from 'preact';
import type { Deck, DrillOf } from '../decks/deck.ts';
import type { IdHead } from '../decks/id.ts';
import type { ConfusingKind, KindName } from '../decks/kinds.ts';
import type { Expected, Follower, Task } from '../listening/listening.ts';
import type { Instrument } from '../neck/instrument.ts';
import type { Place } from '../neck/place.ts';
import type { NeckDot } from '../parts/Neck.tsx';
import type { Item, Verdict } from '../practice/item.ts';
import type { Playing } from '../sound/index.ts';
import type { KeySound } from '../sound/key.ts';
import type { Sounding } from '../sound/sounding.ts';
import type { Key } from '../theory/key.ts';
import type { Naming } from '../theory/naming.ts';

/** One question about an item at one moment. Same item, same seed, same card, on every machine. */
export interface Card<I extends Item = Item> {
  readonly item: I;
  readonly seed: number;
  readonly key: Key;
  readonly instrument: Instrument;
}

/** Why the verdict is what it is: words, what to show, what to sound. */
export interface Explanation {
  /** What it is called, where the title says how it was answered: `ii, Cm`. It stands behind *New* and *Shown*. */
  readonly name?: string;
  /** A few words that take the question's place: `ii, not IV`. */
  readonly title: string;
  /** One sentence. */
  readonly sentence: string;
  /** What is worth adding, in sentences, or empty. */
  readonly detail: string;
  readonly dots: readonly NeckDot[];
  /** The right answer, sounded. */
  readonly sound: Sounding;
  /** What was answered instead, sounded; null where nothing was offered and it is no single thing. */
  readonly otherSound: Sounding | null;
}

/** What the student has chosen to see. */
export interface Shown {
  readonly naming: Naming;
  /** Chord names beside the numerals. */
  readonly chordNames: boolean;
  /** Roman numerals on steps; plain numbers where not. */
  readonly numerals: boolean;
  /** How a key is made heard. */
  readonly keySound: KeySound;
}

/** Why an answer is shown that was not given: its item is met for the first time, or the student asked to be shown it. */
export type Presented = 'new' | 'asked for';

/** The guitar in hand, for a card that is answered by playing. */
export interface Guitar {
  /** Follows what is played. How the guitar is tuned is known to whoever lends it. The card ends it when it goes. */
  follow(expected: Omit<Expected, 'offset' | 'reference'>, follower: Follower): Task;
  /** Seconds on the clock that a performance's times are told on. */
  now(): number;
  /** Hears when strings are struck, muted or sounding, in ms on the clock of `event.timeStamp`; told a moment later. */
  strikes(onStrike: (at: number) => void): Task;
  /** Whether the phone's own delay is known and taken out of those times: only then is anyone early or late. */
  readonly isMeasured: boolean;
  /** Says a few words by a voice that is on the phone; null where nothing is to be spoken. */
  readonly say: ((words: string) => Promise<void>) | null;
  /** Whether a round is to go on by itself, with both hands on the guitar. */
  readonly byItself: boolean;
}

/** What a card's screen is given. */
export interface FaceProps<C extends Card = Card> {
  readonly card: C;
  /** Both null until the verdict is shown. */
  readonly verdict: Verdict | null;
  readonly explanation: Explanation | null;
  readonly shown: Shown;
  /** Where the verdict is none on an answer, for none was given. */
  readonly presented?: Presented | null;
  /** Shows the answer: that counts as not known, and taken for nothing. Where it is missing, nobody can ask for it. */
  show?: (() => void) | undefined;
  /** To be called once, with the answer in the words of `data-answer` and the taps it took. */
  answer(answer: string, taps: number): void;
  /** Null where no guitar is in hand, or the phone does not hear it. */
  readonly guitar: Guitar | null;
  /** To be called in place of `answer` where it cannot be told what was played: neither right nor wrong. */
  unheard(): void;
  /** Told of what is played of the card itself, so that listening is not counted as thinking. */
  sounded(playing: Playing): void;
  /** Goes on to the next card. */
  next(): void;
}

/** What a kind of card works on in the player: eye, ear, hand, or the sense of time. */
type Sense = 'eye' | 'ear' | 'hand' | 'time';

/** What must be there for a card to be asked: that the phone is heard; that the guitar is in hand and the phone hears it. */
type Need = 'sound' | 'guitar';

/** What student and teacher read of a kind. */
export interface KindWords<I extends Item> {
  /** What its drills do, behind *cards to*: `name the arpeggios of the phrases`. */
  readonly drills: string;
  /** What one card does, behind *to*: `name an arpeggio in a phrase`. */
  readonly card: string;
  /** The same in a word or three: `name in a phrase`. */
  readonly brief: string;
  /** Why a drill of these asks nothing, where that is so: `no such chord lies whole on these strings inside these frets`. */
  readonly none: string;
  /** What is to be tapped, on the first card of all, behind what a degree is: `soon you are asked for it, and tap it.` */
  readonly soon: string;
  /** How an arpeggio was when it was taken for another, `seen`; null where wrong answers name none. */
  readonly taken: TakenWord<I['kind']>;
  /** What a drill asks: `name triads on strings 5–4, frets 1 to 8`. */
  drill(drill: DrillOf<I['kind']>): string;
  /** An item in a few words: `vii° on strings 3–2`. */
  item(item: I): string;
  /** Enough words to tell it from its neighbours: `name vii° on strings 3–2, frets 1 to 7`. */
  itemPlace(item: I): string;
}

type TakenWord<K extends KindName> = K extends ConfusingKind ? string : null;

/**
 * A kind of card, all of it: one folder. Its letter in links, the form of its drills and the chance of guessing it are
 * in its line in `decks/kinds.ts`.
 *
 * The functions are methods, so that a kind of one item and card can stand in a list of all kinds: who takes it from
 * there hands it only items of that kind.
 *
 * @typeParam I its items; @typeParam C its cards
 */
export interface Kind<I extends Item = Item, C extends Card<I> = Card<I>> {
  readonly name: I['kind'];
  readonly sense: Sense;
  readonly needs: readonly Need[];
  /** Whether it can be answered by playing, or striking, where the guitar is in hand: its Face follows `guitar`. */
  readonly playable: boolean;
  readonly words: KindWords<I>;
  /** Every item that the drill covers, in a stable order without doubles. */
  items(deck: Deck, drill: DrillOf<I['kind']>): I[];
  /** The item of an id that was taken apart, or null where it is none: the one that `items` makes. */
  read(head: IdHead<I['kind']>, rest: readonly string[]): I | null;
  /** Where an item lies on the neck before it is answered; nowhere if it is only heard. */
  places(item: I, instrument: Instrument): readonly Place[];
  ask(item: I, seed: number): C;
  /** The answers that are offered, in the words of `data-answer`; null where the answer is made, not chosen. */
  answers(card: C): readonly string[] | null;
  judge(card: C, answer: string): Verdict;
  /** Of a card that is met for the first time or was shown, the verdict is right and the answer empty. */
  explain(card: C, verdict: Verdict, answer: string, naming: Naming): Explanation;
  Face(props: FaceProps<C>): VNode;
}
