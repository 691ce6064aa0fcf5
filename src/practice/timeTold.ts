/** What a report tells of time, from the log and from what the phone keeps of figures and free minutes. */
import { partsOf } from '../decks/id.ts';
import { DRILLED_FIGURES } from '../decks/drills/time.ts';
import {
  MOST_FIGURES,
  type FigureFacts,
  type MinuteFacts,
  type TimeTold,
} from '../decks/reportTime.ts';
import { DAY } from '../memory/day.ts';
import type { Reviews } from '../store/review.ts';
import { inTime } from './inTime.ts';
import type { Item } from './item.ts';

/** What was sure of the last card of a figure. */
export interface FigureTiming {
  /** Spread of the steps as a fraction of one; null where it was too small to be told. */
  readonly spread: number | null;
  /** Above 0 it fell behind the click; null where that was not sure. */
  readonly drift: number | null;
  /** The place of the beat that was farthest off, and how late, in seconds; null where none was surely. */
  readonly limps: FigureFacts['limps'];
}

/** Such facts by figure, as `timingId` names them. */
export type Timings = Readonly<Record<string, FigureTiming>>;

/** The figures of a free minute that a report tells of. */
export interface PlayedMinute extends Omit<MinuteFacts, 'count'> {
  /** When it was over, ms. */
  readonly at: number;
}

/** Where the figure's name stands in an id. */
const FIGURE = 5;
/** Free minutes of so many days are counted, and of so many of them the figures are told. */
const DAYS = 28;
const LAST = 5;

/** What of an item's id names its figure, whatever the tempo and the click. */
export const timingId = (id: string): string => partsOf(id).slice(0, -2).join(':');

/** @param minutes of this lesson, the oldest first */
export function timeTold(
  items: readonly Item[],
  reviews: Reviews,
  { timings, minutes }: { readonly timings: Timings; readonly minutes: readonly PlayedMinute[] },
  now: number,
): TimeTold {
  const figures = new Map<string, FigureFacts>();
  for (const { item, highest } of inTime(items, reviews, now)) {
    const figure = DRILLED_FIGURES.find((name) => name === partsOf(item.id)[FIGURE]);
    const timing = timings[timingId(item.id)];
    if (!figure || (!highest && !timing)) continue;
    const before = figures.get(figure);
    const tempo = Math.max(before?.tempo ?? 0, highest?.tempo ?? 0) || null;
    const { spread = null, drift = null, limps = null } = timing ?? before ?? {};
    figures.set(figure, { figure, tempo, spread, drift, limps });
  }
  return {
    figures: [...figures.values()].slice(0, MOST_FIGURES),
    minutes: minutesTold(minutes.filter(({ at }) => at > now - DAYS * DAY)),
  };
}

function minutesTold(minutes: readonly PlayedMinute[]): MinuteFacts | null {
  const last = minutes.slice(-LAST);
  if (last.length === 0) return null;
  const mean = (of: Exclude<keyof MinuteFacts, 'count'>) =>
    last.reduce((sum, one) => sum + one[of], 0) / last.length;
  return {
    count: minutes.length,
    leaping: mean('leaping'),
    run: mean('run'),
    outlined: mean('outlined'),
    reach: mean('reach'),
    spread: mean('spread'),
  };
}
