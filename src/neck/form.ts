import type { Member } from '../theory/chord.ts';
import type { Instrument } from './instrument.ts';
import { midiAt, type Place } from './place.ts';

type MemberPlace = Place & { readonly member: Member };

/**
 * How the members of a shape follow each other from the lowest up (common practice): `stacked` is root position, in
 * thirds up to the top member, 1 3 5 7 9; an `inversion` begins the same order on another member, 3 5 7 1; a `spread`
 * shape leaves that order, 1 5 7 3; a `cluster` of five notes and more has two of them a second apart, 1 9 3 5 7.
 */
export type Form = 'stacked' | 'inversion' | 'spread' | 'cluster';

export const FORMS: readonly Form[] = ['stacked', 'inversion', 'spread', 'cluster'];

/** From so many notes on a second is a cluster: a seventh chord's inversions cannot be without one. */
const CLUSTERS_FROM = 5;

/** The form of places that hold each member of a chord once, from the lowest sounding up. */
export function formOf(instrument: Instrument, places: readonly MemberPlace[]): Form {
  const members = places.map(({ member }) => (member - 1) / 2);
  const sounds = places.map((place) => midiAt(instrument, place));
  const seconds = sounds.slice(1).some((midi, i) => midi - sounds[i]! <= 2);
  if (places.length >= CLUSTERS_FROM && seconds) return 'cluster';
  const inOrder = members.every((member, i) => member === (members[0]! + i) % places.length);
  if (!inOrder) return 'spread';
  return members[0] === 0 ? 'stacked' : 'inversion';
}

/** A position: four fingers, a fret each, and one fret to stretch to. */
const FRETS_IN_POSITION = 5;

/**
 * What a teacher would rather not draw in a shape: each string of the set that it leaves out though it has notes enough,
 * each note beyond two on one string, and that it leaves the position.
 */
export function flawsOf(places: readonly Place[], strings: readonly number[]): number {
  const counts = strings.map((string) => places.filter((place) => place.string === string).length);
  const used = counts.filter((count) => count > 0).length;
  const crowded = counts.reduce((sum, count) => sum + Math.max(0, count - 2), 0);
  const frets = places.map(({ fret }) => fret).filter((fret) => fret > 0);
  const span = frets.length === 0 ? 1 : Math.max(...frets) - Math.min(...frets) + 1;
  const unused = Math.min(strings.length, places.length) - used;
  return unused + crowded + (span > FRETS_IN_POSITION ? 1 : 0);
}
