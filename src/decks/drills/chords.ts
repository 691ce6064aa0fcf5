/** What all drills of chords on the degrees of a key say. */
import * as v from 'valibot';
import { SIZES, type Size } from '../../theory/chord.ts';
import { keyName } from '../../theory/key.ts';
import { DEGREES, hasSevenNotes, parentKey } from '../../theory/scale.ts';
import type { Deck } from '../deck.ts';
import { list, oneOf, whole } from '../fields.ts';
import { bounds, type Extent, type Misfit } from './drillForm.ts';

/** The schemas of degrees and chord sizes. */
export function chordEntries(extent: Extent) {
  const { least } = bounds(extent, 7);
  return {
    degrees: v.optional(
      list(
        whole(1, 7, 'each degree'),
        7,
        'list different degrees of the key, like [1, 4, 5]',
        least,
      ),
      [...DEGREES],
    ),
    sizes: list(
      oneOf(SIZES, 'each chord size'),
      SIZES.length,
      'list different chord sizes, like ["triad", "seventh"]',
      least,
    ),
  };
}

interface WrittenChords {
  readonly degrees?: number[] | undefined;
  readonly sizes: readonly Size[];
}

/** `01.what.range.2`, as `unfoldChords` reads it in `chordWords.ts`. */
export function foldChords({ degrees, sizes }: WrittenChords, what: string, range: string): string {
  const own = `${sizes.map((size) => SIZES.indexOf(size)).join('')}.${what}.${range}`;
  return degrees ? `${own}.${degrees.join('')}` : own;
}

/** Chords stand on the degrees of seven notes only. */
export function chordsMisfit({ key }: Deck): Misfit | null {
  if (hasSevenNotes(key.scale)) return null;
  return {
    says: `${keyName(key)} has fewer than seven notes, and no chords stand on its degrees: take this drill out, or choose a key like "${keyName(parentKey(key))}".`,
  };
}
