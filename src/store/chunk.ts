import { promisifyRequest } from 'idb-keyval';
import { reviewsOf } from './columns.ts';
import { type Flaw, reviewOf } from './logLine.ts';
import type { Review, Reviews } from './review.ts';

/**
 * The log lies on the device in chunks: texts of a line a review, small enough that adding a line rewrites little (50
 * kB); later full ones are packed into columns (see pack.ts). The review `n` of a device is in chunk `floor((n - 1) /
 * CHUNK)`, or in the first chunk of its pack, or in another one where an earlier version put it.
 */
export const CHUNK = 512;

/** A record that cannot be read. It stays where it is, untouched. */
export interface Quarantined {
  readonly device: string;
  readonly text: string;
  readonly flaw: Flaw;
}

/** What a chunk holds. */
export interface Contents {
  readonly reviews: Reviews;
  readonly quarantined: readonly Quarantined[];
}

export function chunkOf(n: number): number {
  return Math.floor((n - 1) / CHUNK);
}

/** So many chunks become one, a pack of columns, once they are full and a later one has been begun. */
export const PACK = 8;

/** The first chunk of the pack that a chunk belongs to: there the pack lies. */
export function packOf(chunk: number): number {
  return chunk - (chunk % PACK);
}

/** Reads a chunk, of lines or packed. */
export function readChunk(device: string, chunk: unknown): Contents {
  return typeof chunk === 'string' ? readLines(device, chunk) : readPack(device, chunk);
}

/** Whatever is wrong with one line costs that line only. */
function readLines(device: string, text: string): Contents {
  const reviews: Review[] = [];
  const quarantined: Quarantined[] = [];
  const rows = parseAll(text) ?? text.split('\n').map(parse);
  rows.forEach((row, k) => {
    const read = row === undefined ? 'torn' : reviewOf(device, row);
    if (typeof read === 'string')
      quarantined.push({ device, text: text.split('\n')[k]!, flaw: read });
    else reviews.push(read);
  });
  return { reviews, quarantined };
}

function readPack(device: string, columns: unknown): Contents {
  const reviews = reviewsOf(device, columns);
  if (typeof reviews !== 'string') return { reviews, quarantined: [] };
  return {
    reviews: [],
    quarantined: [{ device, text: JSON.stringify(columns) ?? '', flaw: reviews }],
  };
}

/** What many chunks hold: the reviews of one after those of the other. */
interface ManyContents {
  readonly runs: readonly Reviews[];
  readonly quarantined: readonly Quarantined[];
}

/** Reads all chunks in a range of keys, each as soon as it has come, while the next is on its way. */
export async function readChunks(all: IDBObjectStore, range: IDBKeyRange): Promise<ManyContents> {
  const keys = (await promisifyRequest(all.getAllKeys(range))) as IDBValidKey[][];
  const chunks = await Promise.all(
    keys.map(async (key) =>
      readChunk(String(key[1]), await promisifyRequest<unknown>(all.get(key))),
    ),
  );
  return {
    runs: chunks.map(({ reviews }) => reviews),
    quarantined: chunks.flatMap(({ quarantined }) => quarantined),
  };
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
