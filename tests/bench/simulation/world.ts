import type { Item } from '../../../src/practice/item.ts';
import { type Random, seeded } from '../../../src/theory/random.ts';

export const DAY = 86_400_000;

/** The first morning, and weekly lessons at five in the afternoon of every seventh day. */
export const START = Date.UTC(2026, 0, 5);
export const WEEKS = 8;
export const lessonAfter = (week: number) => START + (7 * week + 6) * DAY + 17 * 3_600_000;

export const KINDS = ['spot', 'place', 'trace'] as const;

/** The chance of guessing right, by kind of card: one of seven degrees, no guess, one of four paths. */
export const GUESS: Record<string, number> = { spot: 1 / 7, place: 0, trace: 1 / 4 };

/** 150 items as a deck has them: three kinds, seven degrees, two chord sizes, four string sets or contours. */
export function deckOf150(): Item[] {
  const key = { tonic: 'Bb', scale: 'major' } as const;
  const items: Item[] = [];
  const sets = ['6-5-4', '5-4-3', '4-3-2', '3-2-1'];
  for (const size of ['triad', 'seventh'] as const) {
    for (let degree = 1; degree <= 7; degree++) {
      for (const strings of sets) {
        for (const kind of ['spot', 'place'] as const) {
          const id = `${kind}:Bb major:${degree}:${size}:guitar:${strings}:1-5`;
          items.push({ id, kind, key, degree, size, strings });
        }
      }
      for (const contour of ['up', 'down', 'turn', 'skip']) {
        const id = `trace:Bb major:${degree}:${size}:${contour}`;
        items.push({ id, kind: 'trace', key, degree, size, strings: '' });
      }
    }
  }
  return seeded(150).shuffle(items).slice(0, 150);
}

/** A number from the normal distribution (Box–Muller). */
export function normal(random: Random, mean: number, deviation: number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.next()));
  return mean + deviation * radius * Math.cos(2 * Math.PI * random.next());
}

export const sigmoid = (x: number) => 1 / (1 + Math.exp(-x));
export const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x));
