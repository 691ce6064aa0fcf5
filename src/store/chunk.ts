import { promisifyRequest } from 'idb-keyval';
import { type Flaw, reviewOf } from './line.ts';
import type { Review } from './review.ts';

/**
 * The log lies on the device in chunks: texts of a line a review. Small enough that adding a line rewrites little (50
 * kB), large enough that a hundred thousand reviews are few records: read in 80 ms, where chunks of 128 take 170. The
 * review `n` of a device is in chunk `floor((n - 1) / CHUNK)`, or in another one where an earlier version put it.
 */
export const CHUNK = 512;

/** A record that cannot be read. It stays where it is, untouched. */
export interface Aside {
  readonly device: string;
  readonly text: string;
  readonly flaw: Flaw;
}

/** What a chunk holds. */
export interface Contents {
  readonly reviews: readonly Review[];
  readonly aside: readonly Aside[];
}

export function chunkOf(n: number): number {
  return Math.floor((n - 1) / CHUNK);
}

/** Reads a chunk; whatever is wrong with one line costs that line only. */
export function readChunk(device: string, text: unknown): Contents {
  if (typeof text !== 'string') {
    return { reviews: [], aside: [{ device, text: JSON.stringify(text) ?? '', flaw: 'foreign' }] };
  }
  const reviews: Review[] = [];
  const aside: Aside[] = [];
  const lines = text.split('\n');
  const rows = parseAll(text, lines.length) ?? lines.map(parse);
  rows.forEach((row, k) => {
    const review = row === undefined ? 'torn' : reviewOf(device, row);
    if (typeof review === 'string') aside.push({ device, text: lines[k]!, flaw: review });
    else reviews.push(review);
  });
  return { reviews, aside };
}

/** Reads all chunks in a range of keys. */
export async function readChunks(all: IDBObjectStore, range: IDBKeyRange): Promise<Contents> {
  const [keys, texts] = await Promise.all([
    promisifyRequest(all.getAllKeys(range)),
    promisifyRequest<unknown[]>(all.getAll(range)),
  ]);
  const chunks = texts.map((text, k) => readChunk(String((keys[k] as unknown[])[1]), text));
  return {
    reviews: chunks.flatMap(({ reviews }) => reviews),
    aside: chunks.flatMap(({ aside }) => aside),
  };
}

/** All lines at once, three times as fast as one by one; null where one of them is not JSON. */
function parseAll(text: string, count: number): unknown[] | null {
  try {
    const rows = JSON.parse(`[${text.replaceAll('\n', ',\n')}]`) as unknown[];
    return rows.length === count ? rows : null;
  } catch {
    return null;
  }
}

/** The value of a line, or undefined where it is not JSON. */
export function parse(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
