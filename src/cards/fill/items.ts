import type { Deck, DrillOf } from '../../decks/deck.ts';
import type { IdHead } from '../../decks/id.ts';
import { memberOf } from '../../theory/chord.ts';
import { degreeOf } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import { degreeOfNote, type Excerpt } from '../excerpt/excerpt.ts';
import {
  excerptFrom,
  heardWords,
  phraseItems,
  readHeard,
  excerptRanges,
  type ItemChord,
  type HeardItem,
  type Worded,
} from '../excerpt/items.ts';
import { type Piece } from '../excerpt/piece.ts';

export type FillItem = HeardItem<'fill'>;

/** One note of every arpeggio of the drill's phrases, to be missed in its stretch. */
export function items(deck: Deck, drill: DrillOf<'fill'>): FillItem[] {
  return phraseItems('fill', deck, drill, worded, read);
}

function worded(piece: Piece): Worded[] {
  let done = 0;
  return excerptRanges(piece).flatMap(([from, to]) => {
    const first = piece.groups[from]!.from;
    const whole = excerptFrom(piece, from, to);
    // A stretch that reaches back holds groups that were asked about already.
    const fresh = piece.groups.slice(Math.max(from, done), to);
    done = to;
    return fresh.flatMap((group) => {
      const inside = { ...group, from: group.from - first, to: group.to - first };
      const missing = middleOf(whole, inside);
      if (missing === null) return [];
      const excerpt = { ...whole, missing };
      return [{ ...aboutOf(excerpt)!, words: heardWords(excerpt, piece.tempo) }];
    });
  });
}

/** The note nearest to the middle of a group that could be missed; null where there is none. */
function middleOf(excerpt: Excerpt, { from, to }: { from: number; to: number }): number | null {
  const middle = (from + to - 1) / 2;
  const [nearest] = Array.from({ length: to - from }, (_, i) => from + i)
    .filter((index) => aboutOf({ ...excerpt, missing: index }) !== null)
    .toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  return nearest ?? null;
}

/**
 * The degree that is missing and the size of its arpeggio; null where nothing is, or a note whose lack nobody would
 * hear, as that of the first and of the last, or one outside key and chord, which no degree names.
 */
function aboutOf({ key, notes, groups, missing }: Excerpt): ItemChord | null {
  const note = missing === null ? undefined : notes[missing];
  if (!note || missing === 0 || missing === notes.length - 1) return null;
  const { chord } = groups.find(({ from, to }) => missing! >= from && missing! < to)!;
  const named =
    degreeOf(key, spell(key, note.midi)) !== null || memberOf(chord, note.midi) !== null;
  return named ? { degree: degreeOfNote(key, note), size: chord.size } : null;
}

/** Reads `fill:Bb major:4:seventh:guitar:72 ii7 5/3 4/5 4/1? 3/3 V 3/5 2/3`; null where it is none. */
export function read(head: IdHead<'fill'>, rest: readonly string[]): FillItem | null {
  return readHeard(head, rest, aboutOf);
}
