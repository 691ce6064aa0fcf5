import { placed } from '../../neck/placement.ts';
import type { Phrase, PhraseNote } from '../../theory/phrase.ts';
import { seeded } from '../../theory/random.ts';
import { add, beats, toNumber } from '../../theory/rhythm.ts';
import type { Variation } from '../../theory/variations/variations.ts';
import { inHand } from '../excerpt/items.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import type { Card } from '../kind.ts';
import type { VaryItem } from './items.ts';
import { distance, OFFERED, distinguishable } from './distinguishable.ts';

/** A stretch of a phrase to be heard, then a variation of it; and four names of variations. */
export interface VaryCard extends Card<VaryItem> {
  readonly excerpt: Excerpt;
  /** The stretch, and after it the variation. */
  readonly heard: Phrase;
  readonly right: Variation;
  readonly choices: readonly Variation[];
}

/**
 * Offers four variations, on an odd seed near ones, on an even one far ones, and sounds one of them that a hand can play.
 * Which one is drawn last: nothing in the four tells it.
 */
export function ask(item: VaryItem, seed: number): VaryCard {
  const { tempo } = item;
  const excerpt = inHand(item);
  const { key, instrument } = excerpt;
  const random = seeded(seed);
  const all = random.shuffle(distinguishable(excerpt));
  const near = seed % 2 === 1;
  const isPlayed = (one: Variation) => playedAt(excerpt, one.phrase) !== null;
  const drawn = fourOf(all, near);
  const found = random.shuffle(drawn).find(isPlayed);
  const sounded = found ?? all.find(isPlayed)!;
  const four = found ? drawn : fourOf([sounded, ...all.filter((one) => one !== sounded)], near);
  const right = { ...sounded, phrase: { ...playedAt(excerpt, sounded.phrase)!, tempo } };
  const choices = random
    .shuffle(four)
    .map((one) => (one === sounded ? right : { ...one, phrase: { ...one.phrase, tempo } }));
  const heard = { tempo, notes: [...excerpt.notes, ...after(excerpt.notes, right.phrase.notes)] };
  return { item, seed, key, instrument, excerpt, heard, right, choices };
}

/**
 * The first variation and three others: such as begin on its note, for the first note alone should not tell them apart,
 * and of these those that lie nearest to it, or farthest.
 */
function fourOf(all: readonly Variation[], near: boolean): Variation[] {
  const [first, ...others] = all;
  const begins = ({ phrase }: Variation) =>
    Number(phrase.notes[0]!.midi !== first!.phrase.notes[0]!.midi);
  const off = (one: Variation) => (near ? 1 : -1) * distance(one.phrase, first!.phrase);
  return [
    first!,
    ...others.toSorted((a, b) => begins(a) - begins(b) || off(a) - off(b)).slice(0, OFFERED - 1),
  ];
}

const known = new WeakMap<Phrase, Phrase | null>();

/**
 * A variation with places: where the stretch has all its pitches, there, else where they cost a hand least, if one can.
 * Reckoned once for a variation: `distinguishable` gives the same ones for every card of a stretch.
 */
function playedAt(excerpt: Excerpt, phrase: Phrase): Phrase | null {
  let played = known.get(phrase);
  if (played === undefined) known.set(phrase, (played = withPlaces(excerpt, phrase)));
  return played;
}

function withPlaces({ instrument, notes }: Excerpt, phrase: Phrase): Phrase | null {
  const there = phrase.notes.map((note) => {
    const place = notes.find(({ midi }) => midi === note.midi)?.place;
    return place ? { ...note, place } : null;
  });
  if (there.every((note) => note !== null)) return { ...phrase, notes: there };
  return placed(instrument, phrase);
}

/** The notes of a line from the first beat on that leaves a beat of rest after another line. */
function after(before: readonly PhraseNote[], notes: readonly PhraseNote[]): PhraseNote[] {
  const last = before.at(-1)!;
  const start = beats(Math.ceil(toNumber(add(last.at, last.length))) + 1);
  return notes.map((note) => ({ ...note, at: add(start, note.at) }));
}
