import type { Deck, DrillOf } from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { Place } from '../../neck/place.ts';
import { chordOn, type Chord } from '../../theory/chord.ts';
import { chroma } from '../../theory/note.ts';
import { DEGREES } from '../../theory/scale.ts';
import { memberIn, readExcerpt, writeExcerpt, type Excerpt } from '../excerpt/excerpt.ts';
import {
  eyeExcerpt,
  fretsOf,
  isEven,
  onlyPart,
  phraseItems,
  stringSetOf,
  type ExcerptItem,
  type Worded,
} from '../excerpt/items.ts';
import { type Piece } from '../excerpt/piece.ts';

/** One arpeggio of a phrase, where the phrase has it. */
export interface OutlineItem extends ExcerptItem<'outline'> {
  readonly chord: Chord;
}

/** Every arpeggio of the drill's phrases that can be told by sight. */
export function items(deck: Deck, drill: DrillOf<'outline'>): OutlineItem[] {
  return phraseItems('outline', deck, drill, worded, read);
}

function worded(piece: Piece): Worded[] {
  return piece.groups.flatMap(({ chord: { degree, size }, clear }, group) =>
    clear ? [{ degree, size, words: writeExcerpt(eyeExcerpt(piece, group)) }] : [],
  );
}

/** Reads `outline:Bb major:2:seventh:guitar:ii7 5/3 4/5 4/1 3/3`; null where it is none. */
export function read(head: IdHead<'outline'>, rest: readonly string[]): OutlineItem | null {
  const excerpt = readExcerpt(onlyPart(rest), head.key, head.instrument);
  const [group, ...more] = excerpt?.groups ?? [];
  if (!excerpt || !group || more.length > 0 || excerpt.missing !== null) return null;
  const { chord } = group;
  if (chord.degree !== head.degree || chord.size !== head.size) return null;
  if (!isEven(excerpt) || toldBy(excerpt, chord) === null) return null;
  const [strings, frets] = [stringSetOf(excerpt.notes), fretsOf(excerpt.notes)];
  return { id: writeId(head, rest), ...head, strings, frets, excerpt, chord };
}

/** Where the phrase has its notes. */
export function places({ excerpt }: OutlineItem): Place[] {
  return excerpt.notes.map(({ place }) => place);
}

/**
 * How the notes tell the chord: by themselves, or only with the root, which others hold too; null where not even so, or
 * where fewer than three of them are heard.
 */
export function toldBy({ key, notes }: Excerpt, chord: Chord): 'alone' | 'by root' | null {
  const members = new Set(notes.flatMap((note) => memberIn(chord, note) ?? []));
  if (members.size < 3) return null;
  const sounds = chord.notes.filter((_, i) => members.has(chord.members[i]!)).map(chroma);
  const holds = (degree: number) => {
    const other = chordOn(key, degree, chord.size).notes.map(chroma);
    return sounds.every((sound) => other.includes(sound));
  };
  const others = DEGREES.filter((degree) => degree !== chord.degree && holds(degree));
  if (others.length === 0) return 'alone';
  return members.has(1) ? 'by root' : null;
}
