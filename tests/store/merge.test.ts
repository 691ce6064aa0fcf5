import { createStore, type UseStore } from 'idb-keyval';
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChunks } from '../../src/store/chunk.ts';
import { stored, under } from '../../src/store/device.ts';
import { lineOf } from '../../src/store/logLine.ts';
import { mergeInto } from '../../src/store/merge.ts';
import { inOrder } from '../../src/store/order.ts';
import type { Review } from '../../src/store/review.ts';
import { reviewOf } from '../memory/reviews.ts';
import { anyReview } from './reviews.ts';

Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });

const anyLog = fc.array(anyReview, { maxLength: 20 });
const REVIEW = reviewOf({ at: 1_700_000_000_000 });
let phones = 0;

/** A phone with nothing on it. */
function phone(): UseStore {
  return createStore(`phone ${phones++}`, 'everything');
}

/** What is on a phone, in order. */
async function logOn(device: UseStore): Promise<readonly Review[]> {
  const { runs, quarantined } = await device('readonly', (all) => readChunks(all, under('log')));
  expect(quarantined).toEqual([]);
  return inOrder(runs).flatMap((run) => [...run]);
}

/** The log of a phone that took these in, one after the other. */
async function union(...logs: (readonly Review[])[]): Promise<readonly Review[]> {
  const device = phone();
  for (const reviews of logs) {
    await device('readwrite', (all) => mergeInto(all, { reviews, quarantined: [] }));
  }
  return logOn(device);
}

describe('the union of logs on a phone', () => {
  it('is the same from either side', () =>
    fc.assert(
      fc.asyncProperty(anyLog, anyLog, async (a, b) => {
        expect(await union(a, b)).toEqual(await union(b, a));
      }),
    ));

  it('is the same however three are taken together', () =>
    fc.assert(
      fc.asyncProperty(anyLog, anyLog, anyLog, async (a, b, c) => {
        expect(await union(await union(a, b), c)).toEqual(await union(a, await union(b, c)));
      }),
    ));

  it('has a review once that was set aside elsewhere, wherever it lies here', async () => {
    const one = { ...REVIEW, n: 1 };
    const two = { ...REVIEW, n: 2, at: REVIEW.at + 1 };
    const device = phone();
    // An earlier version put it into a later chunk.
    await device('readwrite', (all) => {
      all.put(lineOf(one), ['log', 'phone', 7]);
      return stored(all);
    });
    const aside = [one, two].map((review) => ({
      device: 'phone',
      text: lineOf(review),
      flaw: 'newer' as const,
    }));
    for (let time = 0; time < 2; time++)
      await device('readwrite', (all) => mergeInto(all, { reviews: [], quarantined: aside }));
    expect(await logOn(device)).toEqual([one, two]);
  });

  it('changes nothing the second time, and loses nothing', () =>
    fc.assert(
      fc.asyncProperty(anyLog, anyLog, async (a, b) => {
        const both = await union(a, b);
        expect(await union(a, b, b, a, both)).toEqual(both);
        for (const review of [...a, ...b]) expect(both).toContainEqual(review);
      }),
    ));
});
