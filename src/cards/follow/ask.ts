import { placeText } from '../../neck/placeText.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Chord } from '../../theory/chord.ts';
import { letterDegree } from '../../theory/key.ts';
import { inHand } from '../excerpt/items.ts';
import { memberIn } from '../excerpt/excerpt.ts';
import type { PlacingCard } from '../arpeggio/placing.ts';
import type { FollowItem } from './items.ts';

/** An arpeggio of a phrase, shown by name, and the next one to be put on a string set inside frets. */
export interface FollowCard extends PlacingCard<FollowItem> {
  readonly before: {
    readonly chord: Chord;
    readonly dots: readonly NeckDot[];
    /** As it is sounded, MIDI. */
    readonly line: readonly number[];
  };
}

/** The item says it all: the seed changes nothing. */
export function ask(item: FollowItem, seed: number): FollowCard {
  const { chord, stringSet, frets } = item;
  const excerpt = inHand(item);
  const { key, instrument, notes, groups } = excerpt;
  const shown = groups[0]!.chord;
  const dots = new Map<string, NeckDot>();
  for (const note of notes) {
    const member = memberIn(shown, note);
    const { name, place } = note;
    const named = { ...place, note: name, degree: letterDegree(key, name) };
    dots.set(placeText(place), member ? { ...named, member } : { ...named, look: 'faint' });
  }
  const line = notes.map(({ midi }) => midi);
  const before = { chord: shown, dots: [...dots.values()], line };
  return { item, seed, key, instrument, chord, stringSet, frets, before };
}
