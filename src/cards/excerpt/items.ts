/** Items that are drilled from a deck's phrases: their ids carry an excerpt, so that no deck is needed to ask them. */
import type { Deck, PhraseDrill } from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { KindName } from '../../decks/kinds.ts';
import type { Item } from '../../practice/item.ts';
import { FASTEST, SLOWEST } from '../../sound/tempo.ts';
import { LONGEST_ID } from '../../store/review.ts';
import { add, beats, compare, subtract, type Beats } from '../../theory/rhythm.ts';
import {
  MOST_EXCERPT,
  readExcerpt,
  writeExcerpt,
  type Excerpt,
  type PlacedNote,
} from './excerpt.ts';
import { pieceOf, type Piece, type PieceGroup } from './piece.ts';

/** An item's excerpt as the hand takes it that the item's deck is for, left or right. */
export function inHand({ excerpt, instrument }: ExcerptItem): Excerpt {
  const leftHanded = instrument?.leftHanded ?? false;
  return { ...excerpt, instrument: { ...excerpt.instrument, leftHanded } };
}

/** An item that is drilled from a phrase. */
export interface ExcerptItem<K extends KindName = KindName> extends Item {
  readonly kind: K;
  readonly excerpt: Excerpt;
}

/** What stands in the id of an item of a piece: degree and size, and the words behind the head. */
export interface Worded extends ItemChord {
  readonly words: string;
}

/** The chord that an item is about. */
export type ItemChord = Pick<IdHead, 'degree' | 'size'>;

/** Every item that a drill of this kind covers: those of what a piece gives that can be read back and logged. */
export function phraseItems<K extends KindName, I extends Item>(
  kind: K,
  deck: Deck,
  { phrases = deck.phrases.map((_, i) => i + 1) }: Omit<PhraseDrill, 'kind'>,
  wordedIn: (piece: Piece) => readonly Worded[],
  read: (head: IdHead<K>, rest: readonly string[]) => I | null,
): I[] {
  const found = new Map<string, I | null>();
  for (const number of phrases) {
    const phrase = deck.phrases[number - 1];
    const piece = phrase && pieceOf(phrase, deck);
    if (!piece) continue;
    const { key, instrument } = piece;
    for (const { degree, size, words } of wordedIn(piece)) {
      const head = { kind, key, degree, size, instrument };
      const id = writeId(head, [words]);
      if (id.length <= LONGEST_ID && !found.has(id)) found.set(id, read(head, [words]));
    }
  }
  return [...found.values()].filter((item) => item !== null);
}

/** Some groups of a piece, from the first up to and not including `to`, as an excerpt that begins at 0. */
export function excerptFrom(
  piece: Piece,
  from: number,
  to: number,
  missing: number | null = null,
): Excerpt {
  const { line, ...rest } = cutOut(piece, from, to);
  let at = beats(0);
  const timed = line.map((note, i) => {
    const next = line[i + 1];
    const until = next ? subtract(next.at, note.at) : note.length;
    const length = least(note.length, until, LONGEST);
    const begun = { ...note, at, length };
    at = add(at, add(length, next ? least(subtract(until, length), LONGEST) : beats(0)));
    return begun;
  });
  const first = piece.groups[from]!.from;
  return { ...rest, notes: timed, missing: missing === null ? null : missing - first };
}

/** Some groups of a piece, and their notes as they stand in it. */
function cutOut({ key, instrument, notes, groups }: Piece, from: number, to: number) {
  const chosen = groups.slice(from, to);
  const first = chosen[0]!.from;
  return {
    key,
    instrument,
    line: notes.slice(first, chosen.at(-1)!.to),
    groups: chosen.map(({ chord, ...span }) => ({
      chord,
      from: span.from - first,
      to: span.to - first,
    })),
  };
}

const LONGEST = beats(MOST_EXCERPT.beats);

function least(...times: readonly Beats[]): Beats {
  return times.reduce((a, b) => (compare(b, a) < 0 ? b : a));
}

/** One group of a piece as it is seen: without time, its notes in even triplets. */
export function eyeExcerpt(piece: Piece, group: number): Excerpt {
  const { line, ...rest } = cutOut(piece, group, group + 1);
  const notes = line.map((note, i) => ({ ...note, at: beats(i, 3), length: beats(1, 3) }));
  return { ...rest, notes, missing: null };
}

/** Whether an excerpt is one that is seen, as `eyeExcerpt` makes it. */
export function isEven({ notes }: Excerpt): boolean {
  return notes.every(({ at, length }, i) => at.n * 3 === i * at.d && length.n * 3 === length.d);
}

/** The strings that notes lie on, as a set: `5-4-3`. */
export function stringSetOf(notes: readonly PlacedNote[]): string {
  const strings = new Set(notes.map(({ place }) => place.string));
  return [...strings].toSorted((a, b) => b - a).join('-');
}

/** The lowest and the highest fret that notes lie on. */
export function fretsOf(notes: readonly PlacedNote[]): [number, number] {
  const frets = notes.map(({ place }) => place.fret);
  return [Math.min(...frets), Math.max(...frets)];
}

/**
 * A piece cut into stretches that an ear can hold, by groups `[from, to)`: as many groups as an excerpt may have, the
 * last stretch reaching back for as many.
 *
 * @param wanted which groups may be in one
 */
export function excerptRanges(
  { groups }: Piece,
  wanted: (group: PieceGroup) => boolean = () => true,
): [number, number][] {
  const { groups: most, notes: mostNotes } = MOST_EXCERPT;
  const fit = (from: number, to: number) =>
    to - from <= most &&
    groups[to - 1]!.to - groups[from]!.from <= mostNotes &&
    groups.slice(from, to).every(wanted);
  const found: [number, number][] = [];
  let from = 0;
  while (from < groups.length) {
    let to = from;
    while (to < groups.length && fit(from, to + 1)) to++;
    if (to === from) {
      from++;
      continue;
    }
    const isLast = to === groups.length || !wanted(groups[to]!);
    if (isLast) while (from > 0 && fit(from - 1, to)) from--;
    found.push([from, to]);
    from = to;
  }
  return found;
}

/** A stretch of a phrase to be heard at a tempo. */
export interface HeardItem<K extends KindName = KindName> extends ExcerptItem<K> {
  /** Quarter notes a minute. */
  readonly tempo: number;
}

/** What is heard of a stretch, in words: `72 ii7 5/3 4/5 4/1 V 3/3 3/5 2/3`. */
export function heardWords(excerpt: Excerpt, tempo: number): string {
  return `${tempo} ${writeExcerpt(excerpt)}`;
}

/** Reads what the id of a stretch to be heard has behind its head, by what it is about; null where that is no such. */
export function readHeard<K extends KindName>(
  head: IdHead<K>,
  rest: readonly string[],
  about: (excerpt: Excerpt) => ItemChord | null,
): HeardItem<K> | null {
  const [, tempoText, words = ''] = /^([1-9]\d{1,2}) (.+)$/.exec(onlyPart(rest)) ?? [];
  const tempo = Number(tempoText);
  const excerpt = readExcerpt(words, head.key, head.instrument);
  if (!excerpt || !(tempo >= SLOWEST && tempo <= FASTEST)) return null;
  const read = about(excerpt);
  if (read?.degree !== head.degree || read.size !== head.size) return null;
  return { id: writeId(head, rest), ...head, strings: '', excerpt, tempo };
}

/** The words of an id whose kind has one part behind the head; empty where it has more. */
export function onlyPart([words = '', ...more]: readonly string[]): string {
  return more.length > 0 ? '' : words;
}

/** Degree and size of a stretch that is asked about as a whole: those of its first arpeggio. */
export function firstOf({ groups }: Pick<Excerpt, 'groups'>): ItemChord {
  const { degree, size } = groups[0]!.chord;
  return { degree, size };
}

/** All stretches of a piece, as wholes. */
export function wordedStretches(piece: Piece, wanted?: (group: PieceGroup) => boolean): Worded[] {
  return excerptRanges(piece, wanted).map(([from, to]) => {
    const excerpt = excerptFrom(piece, from, to);
    return { ...firstOf(excerpt), words: heardWords(excerpt, piece.tempo) };
  });
}
