import type { Remark } from '../../decks/notation/remark.ts';
import { writeTablature } from '../../decks/notation/tablature.ts';
import { readTablature } from '../../decks/notation/tablature-reader.ts';
import type { Instrument } from '../../neck/instrument.ts';
import { placed } from '../../neck/variations.ts';
import type { Ruling } from '../../theory/analysis/ruling.ts';
import type { Key } from '../../theory/key.ts';
import type { Phrase } from '../../theory/phrase.ts';
import type { Entry } from '../teach/draft.ts';
import { explained, type Explained } from './explained.ts';

/** How many beats there are from bar line to bar line. */
export const BAR = 4;

/** What the text of an entry says: nothing yet, a phrase, or what keeps it from being one. */
export type EntryRead =
  | { readonly state: 'empty' }
  | { readonly state: 'faults'; readonly faults: readonly Remark[] }
  | {
      readonly state: 'phrase';
      readonly explained: Explained;
      readonly remarks: readonly Remark[];
    };

/** Reads an entry. Rulings on notes that are not there any more are let go. */
export function readEntry(
  { text, length, tempo, rulings }: Entry,
  about: { readonly key: Key; readonly instrument: Instrument },
): EntryRead {
  if (text.trim() === '') return { state: 'empty' };
  const read = readTablature(text, { ...about, length, tempo, beatsPerBar: BAR });
  if ('faults' in read) return { state: 'faults', faults: read.faults };
  const { phrase, remarks } = read;
  const standing = rulings.filter(
    (ruling) => ('span' in ruling ? ruling.span[1] - 1 : ruling.note) < phrase.notes.length,
  );
  return { state: 'phrase', explained: explained(phrase, about, standing), remarks };
}

/** A phrase as the text of an entry, or why no place can be found for one of its notes. */
export function entryText(
  phrase: Phrase,
  instrument: Instrument,
): { readonly text: string } | { readonly fault: string } {
  const there = phrase.notes.every(({ place }) => place) ? phrase : placed(instrument, phrase);
  if (there) return { text: writeTablature(there, instrument, BAR) };
  const { fault } = explained(phrase, { key: { tonic: 'C', scale: 'major' }, instrument });
  return { fault: fault ?? '' };
}

/** A phrase by octaves higher or lower, to be placed anew. */
export function byOctaves({ tempo, notes }: Phrase, octaves: number): Phrase {
  return {
    tempo,
    notes: notes.map(({ midi, name, at, length }) => ({
      midi: midi + 12 * octaves,
      name,
      at,
      length,
    })),
  };
}

/** The rulings with one more, which takes the place of those on the same notes; null only takes those back. */
export function ruled(
  rulings: readonly Ruling[],
  span: readonly [number, number],
  ruling: Ruling | null,
): Ruling[] {
  const others = rulings.filter((other) => {
    const [from, to] = 'span' in other ? other.span : [other.note, other.note + 1];
    return to <= span[0] || from >= span[1];
  });
  return ruling ? [...others, ruling] : others;
}

/**
 * The rulings that still hold after a change of notes: those on notes before it, and those on notes after it, which may
 * have other numbers now.
 */
export function keptRulings(rulings: readonly Ruling[], before: Phrase, after: Phrase): Ruling[] {
  const [was, is] = [before.notes, after.notes];
  const shorter = Math.min(was.length, is.length);
  let same = 0;
  while (same < shorter && was[same]!.midi === is[same]!.midi) same++;
  let sameEnd = 0;
  while (sameEnd < shorter - same && was.at(-1 - sameEnd)!.midi === is.at(-1 - sameEnd)!.midi)
    sameEnd++;
  const moved = is.length - was.length;
  return rulings.flatMap((ruling): Ruling[] => {
    const [from, to] = 'span' in ruling ? ruling.span : [ruling.note, ruling.note + 1];
    if (to <= same) return [ruling];
    if (from < was.length - sameEnd) return [];
    return 'span' in ruling
      ? [{ ...ruling, span: [from + moved, to + moved] }]
      : [{ ...ruling, note: from + moved }];
  });
}
