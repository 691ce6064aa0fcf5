import type { PhraseDrill } from '../../decks/deck.ts';
import { placeLabel } from '../../neck/place.ts';
import { listed } from '../../parts/english.ts';
import { numeralLabel } from '../../theory/naming.ts';
import type { ExcerptItem } from './items.ts';

/** `the phrases`, `phrase 1`, `phrases 1 and 2`: what a drill is on. */
export function phrasesWords({ phrases }: Pick<PhraseDrill, 'phrases'>): string {
  const [first, ...more] = phrases ?? [];
  if (first === undefined) return 'the phrases';
  return more.length > 0 ? `phrases ${listed(phrases!.map(String))}` : `phrase ${first}`;
}

/** `ii7`: the arpeggio that an item's excerpt begins with. */
export function firstNumeral({ excerpt }: ExcerptItem): string {
  return numeralLabel(excerpt.groups[0]!.chord);
}

/** `, from string 3, fret 5`: where it begins. */
export function fromPlace({ excerpt }: ExcerptItem): string {
  return `, from ${placeLabel(excerpt.notes[0]!.place)}`;
}
