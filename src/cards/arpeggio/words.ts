import type { NeckDrill } from '../../decks/deck.ts';
import type { ShapeChoice } from '../../neck/shapeChoice.ts';
import { listed } from '../../parts/english.ts';
import type { Chord } from '../../theory/chord.ts';
import { chordLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import type { ArpeggioItem } from './arpeggio.ts';

/** `triads and sevenths`. */
export function sizesWords(sizes: NeckDrill['sizes']): string {
  return listed(sizes.map((size) => `${size}s`));
}

/** ` in root position`, ` in inversion`; empty where any shape will do. */
export function shapeWords(shapes: ShapeChoice | undefined): string {
  if (shapes === undefined) return '';
  return shapes === 'inversions' ? ' in inversion' : ' in root position';
}

/** `triads and sevenths on strings 5–4 and 4–3, frets 1 to 8`. */
export function drillWords({ sizes, strings, frets, shapes }: Omit<NeckDrill, 'kind'>): string {
  const sets = listed(strings.map((set) => set.join('–')));
  return `${sizesWords(sizes)}${shapeWords(shapes)} on strings ${sets}, frets ${frets[0]} to ${frets[1]}`;
}

/** `vii° on strings 3–2`. */
export function itemWords({ chord, strings, shapes }: ArpeggioItem): string {
  return `${numeralLabel(chord)}${shapeWords(shapes)} on strings ${strings.replaceAll('-', '–')}`;
}

/** `vii° on strings 3–2, frets 1 to 7`. */
export function itemPlaceWords(item: ArpeggioItem): string {
  return `${itemWords(item)}, frets ${item.frets.join(' to ')}`;
}

/** `vii°, A°`; the numeral alone where the player names chords by it. */
export function bothNames(chord: Chord, naming: Naming): string {
  return [...new Set([numeralLabel(chord), chordLabel(chord, naming)])].join(', ');
}

/** The same in a sentence: `vii° (A°)`. */
export function numeralAndName(chord: Chord, naming: Naming): string {
  return bothNames(chord, naming).replace(/, (.*)/, ' ($1)');
}
