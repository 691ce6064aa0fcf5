import type { Place } from './place.ts';

/** `5/3`: string 5, fret 3. */
export function placeText(place: Place): string {
  return `${place.string}/${place.fret}`;
}

/** The place that a text like `5/3` names, or null. Inverts `placeText`. */
export function parsePlace(text: string): Place | null {
  const match = /^([1-9])\/(\d|[12]\d)$/.exec(text);
  return match ? { string: Number(match[1]), fret: Number(match[2]) } : null;
}
