import { type Key } from '../key.ts';
import { spell } from '../spell.ts';
import type { Phrase } from '../phrase.ts';
import { add, beats, compare, subtract, toNumber, type Beats } from '../rhythm.ts';

/** How far apart two notes are written that fall on the same division of the beat. */
const APART = beats(1, 8);
/** A note is written no longer than this, in beats: how long it was held is not heard. */
const LONGEST = beats(2);
const LAST = beats(1);

/**
 * A line that was heard, as it is written: each note on its division of the beat, as long as until the next one. The
 * first bar is the one that the first note is in.
 *
 * @param midis in the order of their onsets
 * @param places of each, in beats (`OverClick.places`)
 * @param tempo beats a minute
 */
export function written(
  midis: readonly number[],
  places: readonly Beats[],
  tempo: number,
  key: Key,
  bar = 4,
): Phrase {
  const first = places[0] ? bar * Math.floor(toNumber(places[0]) / bar) : 0;
  const at: Beats[] = [];
  for (const place of places) {
    const [before, own] = [at.at(-1), subtract(place, beats(first))];
    at.push(before && compare(own, before) <= 0 ? add(before, APART) : own);
  }
  const notes = midis.map((midi, i) => {
    const [from, to] = [at[i]!, at[i + 1]];
    const until = to ? subtract(to, from) : LAST;
    const length = compare(until, LONGEST) > 0 ? LONGEST : until;
    return { midi, name: spell(key, midi), at: from, length };
  });
  return { notes, tempo };
}

/** A part of a phrase, from one note to another, both in it; it begins in the bar that its first note is in. */
export function partOf(phrase: Phrase, first: number, last: number, bar = 4): Phrase {
  const notes = phrase.notes.slice(first, last + 1);
  const from = notes[0] ? bar * Math.floor(toNumber(notes[0].at) / bar) : 0;
  return {
    ...phrase,
    notes: notes.map((note) => ({ ...note, at: subtract(note.at, beats(from)) })),
  };
}
