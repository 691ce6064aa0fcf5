import { bench, describe } from 'vitest';
import { replay } from '../../src/memory/memory.ts';
import type { Item } from '../../src/practice/item.ts';
import { nextCard } from '../../src/practice/next.ts';
import { startRound } from '../../src/practice/round.ts';
import { CHUNK, PACK, readChunk } from '../../src/store/chunk.ts';
import type { Columns } from '../../src/store/columns.ts';
import { columnsOf } from '../../src/store/toColumns.ts';
import { inOrder } from '../../src/store/order.ts';
import type { Review } from '../../src/store/review.ts';
import { reviewOf } from '../memory/reviews.ts';

/** Opening a log, and choosing the next card: the time for twice as much should be twice as long. */

const MINUTE = 60_000;
/** Few, because one takes long. */
const FEW = { iterations: 5, time: 0, warmupIterations: 2, warmupTime: 0 };

function itemsOf(count: number): Item[] {
  return Array.from({ length: count }, (_, k) => ({
    id: `spot:Bb major:${(k % 7) + 1}:seventh:guitar:4-3-2-1:${k}-9`,
    kind: 'spot',
    key: { tonic: 'Bb', scale: 'major' },
    size: 'seventh',
    degree: (k % 7) + 1,
    strings: String(k % 5),
  }));
}

function logOf(count: number, items: readonly Item[]): Review[] {
  return Array.from({ length: count }, (_, k) => {
    const { id } = items[(k * 7919) % items.length]!;
    return reviewOf({ n: k + 1, item: id, at: k * MINUTE, right: k % 5 > 0 });
  });
}

for (const count of [25_000, 50_000, 100_000]) {
  const log = logOf(count, itemsOf(count / 10));
  const packs: Columns[] = [];
  for (let k = 0; k < count; k += PACK * CHUNK)
    packs.push(columnsOf(log.slice(k, k + PACK * CHUNK)));
  describe(`${count} reviews`, () => {
    bench(
      'read',
      () => {
        inOrder(packs.map((columns) => readChunk('phone', columns).reviews));
      },
      FEW,
    );
    bench(
      'replay',
      () => {
        replay(log);
      },
      FEW,
    );
  });
}

for (const count of [2500, 5000, 10_000]) {
  const items = itemsOf(count);
  const memory = replay(logOf(10 * count, items));
  const round = startRound({ deck: '', goal: 'enough', seed: 1, now: 0 });
  let now = 10 * count * MINUTE;
  describe(`the next of ${count} items`, () => {
    bench('later in a round', () => {
      nextCard(round, items, memory, 10 * count * MINUTE);
    });
    bench('after ten minutes', () => {
      now += 10 * MINUTE;
      nextCard(round, items, memory, now);
    });
  });
}
