import type { Instrument } from '../neck/instrument.ts';
import type { Place } from '../neck/place.ts';
import { memberPlaces } from '../neck/shapes.ts';
import type { Item } from '../practice/item.ts';
import type { ArpeggioItem } from './arpeggio.ts';
import type { FollowItem } from './follow/items.ts';
import type { OutlineItem } from './outline/items.ts';

/** An item that lies on the neck, and where. */
export interface LyingItem extends Item {
  readonly frets: readonly [number, number];
  readonly places: readonly Place[];
}

/** Those items that lie on the neck before they are answered: what is heard shows it only then. */
export function onNeck(items: readonly Item[], instrument: Instrument): LyingItem[] {
  return items.flatMap((item): LyingItem[] => {
    const { strings, frets } = item;
    if (strings === '' || !frets) return [];
    return [{ ...item, frets, places: placesOf(item, instrument) }];
  });
}

/** What is named lies where it is seen, what is placed wherever it could be placed. */
function placesOf(item: Item, instrument: Instrument): Place[] {
  if (item.kind === 'outline') return (item as OutlineItem).excerpt.notes.map(({ place }) => place);
  const { chord, stringSet, frets } = item as ArpeggioItem | FollowItem;
  return memberPlaces(instrument, chord, { strings: stringSet, frets }).flat();
}
