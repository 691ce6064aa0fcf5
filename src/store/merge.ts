import { promisifyRequest } from 'idb-keyval';
import { chunkOf, type Contents, parse, readChunks } from './chunk.ts';
import { stored, under } from './device.ts';
import { lineOf, reviewOf } from './logLine.ts';
import { nameOf } from './order.ts';

/**
 * Puts reviews, and records set quarantined, into the chunks of their devices, but for those that are there. One transaction:
 * all of it or nothing. What was quarantined goes to a chunk of its own, `['log', device, 'aside']`, and is read with the
 * others.
 */
export async function mergeInto(
  all: IDBObjectStore,
  { reviews, quarantined }: Pick<Contents, 'reviews' | 'quarantined'>,
): Promise<void> {
  const there = await readChunks(all, under('log'));
  const names = new Set(there.runs.flatMap((run) => Array.from(run, nameOf)));
  const texts = new Set(there.quarantined.map(({ device, text }) => `${device} ${text}`));
  const added = new Map<string, { key: IDBValidKey[]; lines: Set<string> }>();
  const add = (device: string, chunk: number | 'aside', line: string) => {
    const name = JSON.stringify([device, chunk]);
    const entry = added.get(name) ?? { key: ['log', device, chunk], lines: new Set() };
    entry.lines.add(line);
    added.set(name, entry);
  };
  for (const review of reviews) {
    if (!names.has(nameOf(review))) add(review.device, chunkOf(review.n), lineOf(review));
  }
  for (const { device, text } of quarantined) {
    if (texts.has(`${device} ${text}`)) continue;
    for (const line of text.split('\n')) {
      // What could not be read where it comes from may be a review here.
      const review = reviewOf(device, parse(line));
      if (typeof review === 'string') add(device, 'aside', line);
      else if (!names.has(nameOf(review))) add(device, chunkOf(review.n), line);
    }
  }
  for (let { key, lines } of added.values()) {
    let before = await promisifyRequest<unknown>(all.get(key));
    while (before !== undefined && typeof before !== 'string') {
      // Something foreign lies there; it is left alone.
      key = [...key, 'more'];
      before = await promisifyRequest<unknown>(all.get(key));
    }
    const known = before === undefined ? [] : before.split('\n');
    all.put(byCount([...new Set([...known, ...lines])]).join('\n'), key);
  }
  await stored(all);
}

/** Lines by the counts of their reviews; any other line counts as 0. */
function byCount(lines: readonly string[]): string[] {
  const counted = lines.map((line) => {
    const review = reviewOf('any', parse(line));
    return { line, n: typeof review === 'string' ? 0 : review.n };
  });
  return counted.toSorted((a, b) => a.n - b.n).map(({ line }) => line);
}
