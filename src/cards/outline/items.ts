import type { Deck, Drill } from '../../decks/deck.ts';
import { chordOn, type Chord } from '../../theory/chord.ts';
import { chroma } from '../../theory/note.ts';
import { DEGREES } from '../../theory/scale.ts';
import { memberIn, readExcerpt, writeExcerpt, type Excerpt } from '../excerpt.ts';
import {
  eyeExcerpt,
  fretsOf,
  idOf,
  idParts,
  isEven,
  phraseItems,
  type ExcerptItem,
  stringsOf,
  type Piece,
} from '../excerptItems.ts';

/** One arpeggio of a phrase, where the phrase has it. */
export interface OutlineItem extends ExcerptItem {
  readonly chord: Chord;
}

/** Every arpeggio of the drill's phrases that can be told by sight. */
export function items(deck: Deck, drill: Drill): OutlineItem[] {
  return phraseItems('outline', deck, drill, ids, item);
}

function ids(piece: Piece): string[] {
  return piece.groups.flatMap(({ chord: { degree, size }, clear }, group) => {
    if (!clear) return [];
    const excerpt = eyeExcerpt(piece, group);
    return idOf('outline', { ...piece, degree, size }, writeExcerpt(excerpt));
  });
}

/** Reads `outline:Bb major:2:seventh:guitar:ii7 5/3 4/5 4/1 3/3`; null where it is none. */
export function item(id: string): OutlineItem | null {
  const parts = idParts('outline', id);
  const excerpt = parts && readExcerpt(parts.words, parts.key, parts.instrument);
  const [group, ...more] = excerpt?.groups ?? [];
  if (!excerpt || !group || more.length > 0 || excerpt.missing !== null) return null;
  const { chord } = group;
  if (!isEven(excerpt) || standing(excerpt, chord) === null) return null;
  const { degree } = chord;
  const strings = stringsOf(excerpt.notes);
  const frets = fretsOf(excerpt.notes);
  const read: OutlineItem = { id, kind: 'outline', degree, strings, frets, excerpt, chord };
  return idOf('outline', { ...parts, degree, size: chord.size }, parts.words) === id ? read : null;
}

/**
 * How the notes tell the chord: by themselves, or only with the root, which others hold too; null where not even so, or
 * where fewer than three of them are heard.
 */
export function standing({ key, notes }: Excerpt, chord: Chord): 'alone' | 'by root' | null {
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
