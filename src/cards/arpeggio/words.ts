import type { NeckDrill } from '../../decks/deck.ts';
import { listed } from '../../parts/english.ts';
import { numeralLabel } from '../../theory/naming.ts';
import type { ArpeggioItem } from './arpeggio.ts';

/** `triads and sevenths`. */
export function sizesWords(sizes: NeckDrill['sizes']): string {
  return listed(sizes.map((size) => `${size}s`));
}

/** `triads and sevenths on strings 5–4 and 4–3, frets 1 to 8`. */
export function drillWords({ sizes, strings, frets }: Omit<NeckDrill, 'kind'>): string {
  const sets = listed(strings.map((set) => set.join('–')));
  return `${sizesWords(sizes)} on strings ${sets}, frets ${frets[0]} to ${frets[1]}`;
}

/** `vii° on strings 3–2`. */
export function itemWords({ chord, strings }: ArpeggioItem): string {
  return `${numeralLabel(chord)} on strings ${strings.replaceAll('-', '–')}`;
}

/** `vii° on strings 3–2, frets 1 to 7`. */
export function itemPlaceWords(item: ArpeggioItem): string {
  return `${itemWords(item)}, frets ${item.frets.join(' to ')}`;
}
