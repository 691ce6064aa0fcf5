import { isKindOf } from '../decks/kinds.ts';
import { partsOf } from '../decks/id.ts';
import type { Reviews } from '../store/review.ts';
import { evenByWeek, highestEven, type TimeRecord } from '../theory/timing/progress.ts';
import type { Item } from './item.ts';

/** How fast a figure was kept even. */
export interface FigureInTime {
  /** One of its items, to name it by. */
  readonly item: Item;
  /** Beats a minute of the fastest that was judged even, and when it first was, ms; null where none was yet. */
  readonly highest: { readonly tempo: number; readonly at: number } | null;
  /** The fastest in each of the last weeks, this one last; null where none was. */
  readonly weeks: readonly (number | null)[];
}

/** So many weeks are looked back on. */
export const WEEKS = 8;

/** Where the tempo stands in an id, counted from its end. */
const TEMPO = -2;

/**
 * Of each figure among some items the highest tempo at which it was even, whatever the click, and week by week.
 *
 * @param now ms since 1970
 */
export function inTime(items: readonly Item[], reviews: Reviews, now: number): FigureInTime[] {
  const figures = new Map<string, Item>();
  const timed = items.filter(({ kind }) => isKindOf('time', kind));
  for (const item of timed) {
    const figure = figureOf(item.id);
    if (!figures.has(figure)) figures.set(figure, item);
  }
  if (figures.size === 0) return [];
  const records: TimeRecord[] = [];
  reviews.forEach(({ item, right, at }) => {
    const figure = figureOf(item);
    if (!figures.has(figure)) return;
    const tempo = Number(partsOf(item).at(TEMPO));
    records.push({ figure, tempo, evenness: null, verdict: right ? 'right' : 'wrong', at });
  });
  const highest = highestEven(records);
  return [...figures].map(([figure, item]) => ({
    item,
    highest: highest.get(figure) ?? null,
    weeks: evenByWeek(records, figure, now, WEEKS),
  }));
}

/** What of an id is the same at every tempo with every click. */
const figureOf = (id: string): string => partsOf(id).slice(0, TEMPO).join(':');
