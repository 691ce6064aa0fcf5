import { placed } from '../../neck/placement.ts';
import type { Phrase, PhraseNote } from '../../theory/phrase.ts';
import { seeded } from '../../theory/random.ts';
import { add, beats, toNumber } from '../../theory/rhythm.ts';
import type { Variation } from '../../theory/variations/variations.ts';
import { inHand } from '../excerpt/items.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import type { Card } from '../kind.ts';
import type { VaryItem } from './items.ts';
import { choicesBeside, lineDistance, OFFERED, distinguishable } from './distinguishable.ts';

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
  const near = seed % 2 === 1;
  const isPlayed = (one: Variation) => playedAt(excerpt, one.phrase) !== null;
  const all = random.shuffle(distinguishable(excerpt));
  const first = all.find((one) => isPlayed(one) && beginAlike(excerpt, one)) ?? all.find(isPlayed)!;
  const four = random.shuffle(fourOf(excerpt, first, near));
  const sounded = four.find(isPlayed)!;
  const right = { ...sounded, phrase: { ...playedAt(excerpt, sounded.phrase)!, tempo } };
  const choices = random
    .shuffle(four)
    .map((one) => (one === sounded ? right : { ...one, phrase: { ...one.phrase, tempo } }));
  const heard = { tempo, notes: [...excerpt.notes, ...after(excerpt.notes, right.phrase.notes)] };
  return { item, seed, key, instrument, excerpt, heard, right, choices };
}

/** Whether as many as are offered begin on a variation's first note. */
function beginAlike(excerpt: Excerpt, one: Variation): boolean {
  return choicesBeside(excerpt, one).alike.length >= OFFERED - 1;
}

/** A variation and three others that begin on its note, if so many do: those that lie nearest to it, or farthest. */
function fourOf(excerpt: Excerpt, first: Variation, near: boolean): Variation[] {
  const off = (one: Variation) => (near ? 1 : -1) * lineDistance(one.phrase, first.phrase);
  const byDistance = (all: readonly Variation[]) => all.toSorted((a, b) => off(a) - off(b));
  const { alike, other } = choicesBeside(excerpt, first);
  return [first, ...byDistance(alike), ...byDistance(other)].slice(0, OFFERED);
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
