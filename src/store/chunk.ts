import { promisifyRequest } from 'idb-keyval';
import { hasColumns, reviewsOf } from './columns.ts';
import { type Flaw, reviewOf } from './line.ts';
import type { Review } from './review.ts';

/**
 * The log lies on the device in chunks: texts of a line a review, small enough that adding a line rewrites little (50
 * kB). The review `n` of a device is in chunk `floor((n - 1) / CHUNK)`, or in the first chunk of its pack (see pack.ts),
 * or in another one where an earlier version put it.
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
  const rows = parseAll(text) ?? text.split('\n').map(parse);
  rows.forEach((row, k) => {
    const read = readRow(device, row);
    if (typeof read === 'string') aside.push({ device, text: text.split('\n')[k]!, flaw: read });
    else if ('item' in read) reviews.push(read);
    else for (const review of read) reviews.push(review);
  });
  return { reviews, aside };
}

function readRow(device: string, row: unknown): Review | readonly Review[] | Flaw {
  if (row === undefined) return 'torn';
  return hasColumns(row) ? reviewsOf(device, row) : reviewOf(device, row);
}

/** Reads all chunks in a range of keys. */
export async function readChunks(all: IDBObjectStore, range: IDBKeyRange): Promise<Contents> {
  const [keys, texts] = await Promise.all([
    promisifyRequest(all.getAllKeys(range) as IDBRequest<IDBValidKey[][]>),
    promisifyRequest<unknown[]>(all.getAll(range)),
  ]);
  const reviews: Review[] = [];
  const aside: Aside[] = [];
  texts.forEach((text, k) => {
    const chunk = readChunk(String(keys[k]![1]), text);
    for (const review of chunk.reviews) reviews.push(review);
    aside.push(...chunk.aside);
  });
  return { reviews, aside };
}

/** All lines at once, three times as fast as one by one; null where one of them is not JSON. */
function parseAll(text: string): unknown[] | null {
  try {
    const rows = JSON.parse(`[${text.replaceAll('\n', ',\n')}]`) as unknown[];
    return rows.length === linesIn(text) ? rows : null;
  } catch {
    return null;
  }
}

function linesIn(text: string): number {
  let count = 1;
  for (let k = text.indexOf('\n'); k >= 0; k = text.indexOf('\n', k + 1)) count++;
  return count;
}

/** The value of a line, or undefined where it is not JSON. */
export function parse(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
