import type { Instrument } from '../neck/instrument.ts';
import type { Place } from '../neck/place.ts';
import type { Item } from '../practice/item.ts';
import { KINDS } from './index.ts';

/** An item that lies on the neck, and where. */
export interface LyingItem extends Item {
  readonly frets: readonly [number, number];
  readonly places: readonly Place[];
}

/** Those items that lie on the neck before they are answered: what is heard shows it only then. */
export function onNeck(items: readonly Item[], instrument: Instrument): LyingItem[] {
  return items.flatMap((item): LyingItem[] => {
    const places = KINDS[item.kind].places(item, instrument);
    if (places.length === 0) return [];
    const frets = places.map(({ fret }) => fret);
    return [{ ...item, places, frets: item.frets ?? [Math.min(...frets), Math.max(...frets)] }];
  });
}
