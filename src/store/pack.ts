import { promisifyRequest } from 'idb-keyval';
import { CHUNK, PACK, packOf, readChunk } from './chunk.ts';
import { columnsOf } from './toColumns.ts';
import { stored, under } from './device.ts';
import { lineOf } from './logLine.ts';
import type { Review } from './review.ts';

/**
 * Packs what can be packed, all of it or nothing. What that buys (a new tab of Chromium, medians of 11, lines against
 * packs): nothing at 20,000 reviews (114 and 104 ms to open); at 100,000, three years of a hundred cards a day, 386 and
 * 116 ms to open, 49 and 32 MB of memory, 4.1 and 2.6 MB on the device. A device's
 * last chunk stays as it is; so do chunks that hold anything but their own reviews, each once and as `lineOf` writes it.
 */
export async function pack(all: IDBObjectStore): Promise<void> {
  const keys = await promisifyRequest(all.getAllKeys(under('log')));
  const names = new Set(keys.map((key) => JSON.stringify(key)));
  for (const [, device, first] of keys as [string, string, unknown][]) {
    if (typeof first !== 'number' || packOf(first) !== first) continue;
    const chunks = Array.from({ length: PACK + 1 }, (_, k) => ['log', device, first + k]);
    if (!chunks.every((key) => names.has(JSON.stringify(key)))) continue;
    const range = IDBKeyRange.bound(chunks[0], chunks[PACK], false, true);
    const texts = await promisifyRequest<unknown[]>(all.getAll(range));
    const reviews = readFull(device, first, texts);
    if (reviews === null) continue;
    for (const key of chunks.slice(1, PACK)) all.delete(key);
    all.put(columnsOf(reviews), chunks[0]);
  }
  await stored(all);
}

/** The reviews of full chunks, from the first one on; null where they hold anything else. */
function readFull(device: string, first: number, texts: readonly unknown[]): Review[] | null {
  const reviews = texts.flatMap((text) => [...readChunk(device, text).reviews]);
  const whole =
    texts.length === PACK &&
    reviews.length === PACK * CHUNK &&
    reviews.every(({ n }, k) => n === first * CHUNK + k + 1) &&
    reviews.map(lineOf).join('\n') === texts.join('\n');
  return whole ? reviews : null;
}
