import { promisifyRequest } from 'idb-keyval';
import {
  type Quarantined,
  CHUNK,
  chunkOf,
  type Contents,
  PACK,
  packOf,
  readChunk,
  readChunks,
} from './chunk.ts';
import { store, stored, under } from './device.ts';
import { newId } from './newId.ts';
import { lineOf } from './logLine.ts';
import { inOrder } from './order.ts';
import { MOST_COUNT, type Review, type Reviews } from './review.ts';
import { Runs } from './runs.ts';
import { StoreTrouble } from './trouble.ts';

/** A review before the log has put its device and count to it. */
export type Answer = Omit<Review, 'device' | 'n'>;

/** The student's log: it only grows. */
export interface Log {
  /** This device's id. */
  readonly device: string;
  /** Every review in one order, those not stored yet last. The same list all along, growing in place. */
  readonly reviews: Reviews;
  /** Records that cannot be read: they stay where they are, and the student is told how many. */
  readonly quarantined: readonly Quarantined[];
  /** Why the log could not be opened, or the last answer not be stored; null while all is well. */
  readonly trouble: StoreTrouble | null;
  /**
   * Adds a review; resolves with it once it is on the device.
   *
   * @throws StoreTrouble where the device does not take it. The review is in `reviews` all the same, and is written
   * together with the next one.
   */
  append(answer: Answer): Promise<Review>;
  /**
   * Takes in the reviews of a backup, and what was set quarantined: the union of both logs, so that reading a file twice
   * changes nothing. Resolves with how many reviews were new, once they are on the device: all of them or none.
   * Replay the memory afterwards.
   *
   * @throws StoreTrouble
   */
  merge(backup: Pick<Contents, 'reviews' | 'quarantined'>): Promise<number>;
  /**
   * Erases everything that is on the device, decks and settings too. The caller has asked twice.
   *
   * @throws StoreTrouble
   */
  erase(): Promise<void>;
  /** Called when another tab has erased everything: what this one still has is nobody's any more. */
  erased: () => void;
  /** Calls back when another tab's reviews have come in: replay the memory. Returns what ends that. */
  watch(news: () => void): () => void;
}

/** Persistent storage is asked for once so many reviews would be lost with it. */
const WORTH_KEEPING = 20;

/** Opens the log. Never fails: where the device refuses, it goes on in memory, and `trouble` says why. */
export async function openLog(): Promise<Log> {
  const log = new DeviceLog();
  await log.open();
  return log;
}

class DeviceLog implements Log {
  device = newId();
  readonly reviews = new Runs();
  quarantined: readonly Quarantined[] = [];
  trouble: StoreTrouble | null = null;
  erased: () => void = () => {};

  #isOpen = false;
  /** This device's highest count that is stored and read. */
  #last = 0;
  readonly #unsaved: Answer[] = [];
  /** How many of `reviews`, at their end, are not stored. */
  #provisional = 0;
  /** One thing after the other. */
  #queue: Promise<unknown> = Promise.resolve();
  readonly #watchers = new Set<() => void>();
  readonly #channel =
    typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('skipwise log');

  async open(): Promise<void> {
    this.#channel?.addEventListener('message', ({ data }) => {
      if (data === 'erased') {
        this.#unsaved.length = 0;
        this.erased();
      }
      this.#next(() => (data === 'more' ? this.#catchUp() : this.#readAgain())).catch(() => {});
    });
    await this.#next(() => this.#load()).catch((error: unknown) => this.#keepWhy(error));
    this.#pack();
  }

  append(answer: Answer): Promise<Review> {
    this.#unsaved.push(answer);
    this.#show(answer);
    return this.#next(() => this.#save(answer)).catch((error: unknown) => {
      this.#keepWhy(error);
      throw error;
    });
  }

  merge(backup: Pick<Contents, 'reviews' | 'quarantined'>): Promise<number> {
    return this.#next(async () => {
      const { mergeInto } = await import('./merge.ts');
      await this.#load();
      const before = this.reviews.length;
      await store('readwrite', (all) => mergeInto(all, backup));
      await this.#readAgain();
      this.#channel?.postMessage('all');
      this.#pack();
      return this.reviews.length - before;
    });
  }

  erase(): Promise<void> {
    return this.#next(async () => {
      await store('readwrite', (all) => {
        all.clear();
        return stored(all);
      });
      this.#unsaved.length = 0;
      await this.#readAgain();
      this.#channel?.postMessage('erased');
    });
  }

  watch(news: () => void): () => void {
    this.#watchers.add(news);
    return () => this.#watchers.delete(news);
  }

  #keepWhy(error: unknown): void {
    if (!(error instanceof StoreTrouble)) throw error;
    this.trouble = error;
  }

  /** Does one thing after the other. */
  #next<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#queue.then(work);
    this.#queue = done.catch(() => {});
    return done;
  }

  /** Makes the next opening fast; what this one has read stays as it is. */
  #pack(): void {
    if (this.reviews.length < PACK * CHUNK) return;
    this.#next(async () => {
      const { pack } = await import('./pack.ts');
      await store('readwrite', pack);
    }).catch(() => {});
  }

  async #load(): Promise<void> {
    if (!this.#isOpen) await this.#read();
  }

  /** Reads everything; only once that has succeeded it replaces what was known. */
  async #read(): Promise<void> {
    const [known, { runs, quarantined }] = await store('readonly', (all) =>
      Promise.all([promisifyRequest<unknown>(all.get('device')), readChunks(all, under('log'))]),
    );
    this.device = isId(known) ? known : await store('readwrite', (all) => newDevice(all, null));
    this.reviews.begin(inOrder(runs));
    this.#last = this.#lastRead();
    if (this.#last === MOST_COUNT) await this.#beginAnew();
    this.#provisional = 0;
    this.quarantined = quarantined;
    this.#take([]);
    this.#isOpen = true;
    if (this.#unsaved.length === 0) this.trouble = null;
  }

  /** Goes on under another id: a forged backup has used up the counts of this one. */
  async #beginAnew(): Promise<void> {
    this.device = await store('readwrite', (all) => newDevice(all, this.device));
    this.#last = this.#lastRead();
  }

  /** This device's highest count among what was read; its reviews are in their order. */
  #lastRead(): number {
    for (let k = this.reviews.length - 1; k >= 0; k--) {
      const { device, n } = this.reviews.at(k)!;
      if (device === this.device) return n;
    }
    return 0;
  }

  /** Stores what is not stored yet, up to this answer. */
  async #save(answer: Answer): Promise<Review> {
    await this.#load();
    const answers = this.#unsaved.slice(0, this.#unsaved.indexOf(answer) + 1);
    const before = this.#last;
    const fresh = await store('readwrite', (all) => this.#write(all, answers));
    this.#unsaved.splice(0, answers.length);
    this.#take(fresh);
    this.trouble = null;
    this.#channel?.postMessage('more');
    if (before < WORTH_KEEPING && this.#last >= WORTH_KEEPING) askToKeep();
    if (fresh.length > answers.length) this.#announce();
    return fresh.at(-1)!;
  }

  /** Adds lines to this device's last chunks; gives what other tabs had added, then what was added now. */
  async #write(all: IDBObjectStore, answers: readonly Answer[]): Promise<Review[]> {
    const { device } = this;
    const fresh: Review[] = [];
    let left = [...answers];
    let last = this.#last;
    for (let chunk = await this.#tail(all); left.length > 0; chunk++) {
      const key = ['log', device, chunk];
      const value = await promisifyRequest<unknown>(all.get(key));
      const others = value === undefined ? [] : [...readChunk(device, value).reviews];
      const lines = typeof value === 'string' ? value.split('\n') : [];
      // What was read before counts too: earlier chunks were smaller, so the last count may lie in a later one.
      last = Math.max(last, chunk * CHUNK + lines.length, others.at(-1)?.n ?? 0);
      // To a pack, or to something foreign, nothing is added.
      const takesLines = value === undefined || typeof value === 'string';
      const room = takesLines ? Math.max(0, (chunk + 1) * CHUNK - last) : 0;
      const mine = left.slice(0, room).map((answer, k) => ({ ...answer, device, n: last + k + 1 }));
      left = left.slice(mine.length);
      fresh.push(...others.filter(({ n }) => n > this.#last), ...mine);
      if (mine.length > 0) all.put([...lines, ...mine.map(lineOf)].join('\n'), key);
    }
    await stored(all);
    return fresh;
  }

  /** The chunk with this device's next count; where there is none, its pack's first, for another tab may have packed it. */
  async #tail(all: IDBObjectStore): Promise<number> {
    const chunk = chunkOf(this.#last + 1);
    const key = await promisifyRequest(all.getKey(['log', this.device, chunk]));
    return key === undefined ? packOf(chunk) : chunk;
  }

  async #readAgain(): Promise<void> {
    await this.#read();
    this.#announce();
  }

  /** Reads what other tabs have written. */
  async #catchUp(): Promise<void> {
    if (!this.#isOpen) return;
    const { device } = this;
    const { runs } = await store('readonly', async (all) => {
      const tail = ['log', device, await this.#tail(all)];
      return readChunks(all, IDBKeyRange.bound(tail, ['log', device, []]));
    });
    const fresh = runs.flatMap((run) => [...run].filter(({ n }) => n > this.#last));
    if (fresh.length === 0) return;
    this.#take(fresh);
    this.#announce();
  }

  /** Puts stored reviews behind those that were, before those not stored yet. */
  #take(fresh: readonly Review[]): void {
    this.reviews.drop(this.#provisional);
    for (const review of fresh) {
      this.reviews.push(review);
      if (review.device === this.device) this.#last = Math.max(this.#last, review.n);
    }
    this.#provisional = 0;
    for (const answer of this.#unsaved) this.#show(answer);
  }

  /** Shows an answer among the reviews before it is stored, with the count that it will most likely get. */
  #show(answer: Answer): void {
    this.#provisional++;
    this.reviews.push({ ...answer, device: this.device, n: this.#last + this.#provisional });
  }

  #announce(): void {
    for (const news of this.#watchers) news();
  }
}

const isId = (id: unknown): id is string => typeof id === 'string' && id !== '';

/** The device's id, made once, and anew where it is `spent`; another tab may just have done so. */
async function newDevice(all: IDBObjectStore, spent: string | null): Promise<string> {
  const known = await promisifyRequest<unknown>(all.get('device'));
  if (isId(known) && known !== spent) return known;
  const fresh = newId();
  all.put(fresh, 'device');
  await stored(all);
  return fresh;
}

/** Asks the browser not to clear this page's storage when space runs short. */
function askToKeep(): void {
  const { navigator } = globalThis as { navigator?: Partial<Navigator> };
  navigator?.storage?.persist?.().catch(() => {
    // Refused is as good as not asked: the log is stored all the same, and can be saved to a file.
  });
}
