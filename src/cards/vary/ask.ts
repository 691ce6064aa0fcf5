import { placed } from '../../neck/placement.ts';
import type { Phrase, PhraseNote } from '../../theory/phrase.ts';
import { seeded } from '../../theory/random.ts';
import { add, beats, toNumber } from '../../theory/rhythm.ts';
import type { Variation } from '../../theory/variations/variations.ts';
import { inHand } from '../excerpt/items.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import type { Card } from '../kind.ts';
import type { VaryItem } from './items.ts';
import { distance, OFFERED, told } from './told.ts';

/** A stretch of a phrase to be heard, then a variation of it; and four names of variations. */
export interface VaryCard extends Card<VaryItem> {
  readonly excerpt: Excerpt;
  /** The stretch, and after it the variation. */
  readonly heard: Phrase;
  readonly right: Variation;
  readonly choices: readonly Variation[];
}

/** Draws one of the variations that a hand can play. An odd seed offers those that sound near to it, an even one far ones. */
export function ask(item: VaryItem, seed: number): VaryCard {
  const { tempo } = item;
  const excerpt = inHand(item);
  const { key, instrument } = excerpt;
  const random = seeded(seed);
  const all = random.shuffle(told(excerpt)!);
  const found = all.find(({ phrase }) => playedAt(excerpt, phrase) !== null)!;
  const right = { ...found, phrase: { ...playedAt(excerpt, found.phrase)!, tempo } };
  const sign = seed % 2 === 1 ? 1 : -1;
  const wrong = all
    .filter((other) => other !== found)
    .toSorted(
      (a, b) => sign * (distance(a.phrase, right.phrase) - distance(b.phrase, right.phrase)),
    )
    .slice(0, OFFERED - 1)
    .map((other) => ({ ...other, phrase: { ...other.phrase, tempo } }));
  const choices = random.shuffle([right, ...wrong]);
  const heard = { tempo, notes: [...excerpt.notes, ...after(excerpt.notes, right.phrase.notes)] };
  return { item, seed, key, instrument, excerpt, heard, right, choices };
}

/** A variation with places: where the stretch has all its pitches, there, else where they cost a hand least, if one can. */
function playedAt({ instrument, notes }: Excerpt, phrase: Phrase): Phrase | null {
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
