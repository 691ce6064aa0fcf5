import { placeText } from '../../neck/placeText.ts';
import type { MemberPlace } from '../../neck/shapes.ts';
import { inHand } from '../excerpt/items.ts';
import { memberIn } from '../excerpt/excerpt.ts';
import type { NamedCard } from '../arpeggio/named.ts';
import { toldBy, type OutlineItem } from './items.ts';

/** The notes of one arpeggio of a phrase, as plain dots where the phrase has them. */
export interface OutlineCard extends NamedCard<OutlineItem> {
  /** The line as it is sounded, MIDI. */
  readonly line: readonly number[];
}

/** The item says it all: the seed changes nothing. Tones that only embellish are not among the dots. */
export function ask(item: OutlineItem, seed: number): OutlineCard {
  const { chord } = item;
  const excerpt = inHand(item);
  const { key, instrument, notes } = excerpt;
  const places = new Map<string, MemberPlace>();
  for (const note of notes) {
    const member = memberIn(chord, note);
    if (member === null) continue;
    const name = chord.notes[chord.members.indexOf(member)]!;
    places.set(placeText(note.place), { ...note.place, member, note: name });
  }
  const frets = [...places.values()].map(({ fret }) => fret);
  return {
    item,
    seed,
    key,
    instrument,
    chord,
    shape: { places: [...places.values()] },
    frets: [Math.min(...frets), Math.max(...frets)],
    rootShown: toldBy(excerpt, chord) === 'by root',
    line: notes.map(({ midi }) => midi),
  };
}
