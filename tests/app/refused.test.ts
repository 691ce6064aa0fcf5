/**
 * The device is full, or refuses, at any write of a session, once or from then on: every card still gets its verdict,
 * what was not kept is said, nothing that was answered is lost or stored twice, and a file has it all.
 */
import { FDBDatabase, FDBObjectStore } from './indexedDb.ts';
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { readDeck } from '../../src/decks/document.ts';
import type { Deck } from '../../src/decks/deck.ts';
import { readBackup } from '../../src/store/backup.ts';

let state: typeof import('../../src/app/state.ts');
let session: typeof import('../../src/app/round/session.ts');
let questions: typeof import('../../src/app/round/toggleQuestion.ts');
let keeping: typeof import('../../src/app/settings/keeping.ts');
let store: typeof import('../../src/store/device.ts').store;

/** As much of a page as a session needs. */
beforeAll(async () => {
  Object.assign(globalThis, {
    indexedDB: new IDBFactory(),
    IDBKeyRange,
    document: { documentElement: { dataset: {} }, addEventListener() {} },
    location: { hash: '' },
    addEventListener() {},
  });
  state = await import('../../src/app/state.ts');
  session = await import('../../src/app/round/session.ts');
  questions = await import('../../src/app/round/toggleQuestion.ts');
  keeping = await import('../../src/app/settings/keeping.ts');
  ({ store } = await import('../../src/store/device.ts'));
});
beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const KINDS_OF_FAULT = ['full', 'full at the end', 'refused'] as const;
type FaultKind = (typeof KINDS_OF_FAULT)[number];

/** Counts writes, and has those that are chosen fail. */
function failing(kind: FaultKind, at: (write: number) => boolean): () => number {
  let writes = 0;
  const fails = () => at(++writes);
  const { put } = FDBObjectStore.prototype;
  const { transaction } = FDBDatabase.prototype;
  const full = new DOMException('No space', 'QuotaExceededError');
  if (kind === 'refused') {
    vi.spyOn(FDBDatabase.prototype, 'transaction').mockImplementation(function (
      this: object,
      ...of: unknown[]
    ) {
      if (of[1] === 'readwrite' && fails()) throw new DOMException('Closing', 'InvalidStateError');
      return transaction.apply(this, of);
    });
    return () => writes;
  }
  vi.spyOn(FDBObjectStore.prototype, 'put').mockImplementation(function (
    this: { transaction: { abort(): void } },
    ...of: unknown[]
  ) {
    const isDue = fails();
    if (isDue && kind === 'full') throw full;
    const request = put.apply(this, of);
    if (isDue) {
      // Browsers find out when they write it down.
      Object.defineProperty(this.transaction, 'error', { value: full });
      queueMicrotask(() => this.transaction.abort());
    }
    return request;
  });
  return () => writes;
}

const deck = deckOf({
  version: 1,
  title: 'Tuesday',
  key: 'Bb major',
  drills: [{ kind: 'spot', degrees: [1, 4], sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
});

function deckOf(document: object): Deck {
  const read = readDeck(document);
  if ('fault' in read) throw new Error(read.fault);
  return read.deck;
}

/** The answers that are given; null asks to be shown it. */
const GIVEN = ['1', null] as const;

/** A device on which nothing is kept. */
async function begunAnew(): Promise<void> {
  await store('readwrite', (all) => void all.clear());
  session.round.value = null;
  await state.open();
}

/** A session of a student, with everything in it that is kept. Says what was complained of. */
async function practise(): Promise<Set<string>> {
  const complaints = new Set<string>();
  const seen = <T>(value: T) => {
    if (state.log.value!.trouble) complaints.add(state.log.value!.trouble.message);
    return value;
  };
  const { id } = await state.take(deck);
  state.changeSettings({ volume: 0.5 });
  await session.beginRound(id, 3);
  for (const given of GIVEN) {
    while (session.shown.value?.presented === 'new') await session.goOn();
    const { card } = session.shown.value!;
    await session.answer(given, 1);
    seen(null);
    await vi.advanceTimersByTimeAsync(600);
    expect(session.shown.value).toMatchObject({ card, verdict: { right: expect.any(Boolean) } });
    questions.toggleQuestion(card.item.id);
    await session.goOn();
  }
  expect(session.round.value!.asked).toHaveLength(GIVEN.length);
  return complaints;
}

/** What the device has of the log, opened anew. */
async function onDevice() {
  const { openLog } = await import('../../src/store/log.ts');
  return [...(await openLog()).reviews];
}

const cards = (reviews: Iterable<{ readonly item: string; readonly seed: number }>) =>
  Array.from(reviews, ({ item, seed }) => `${item} ${seed}`);

async function writesOf(kind: FaultKind): Promise<number> {
  await begunAnew();
  const writes = failing(kind, () => false);
  await practise();
  await vi.advanceTimersByTimeAsync(0);
  vi.restoreAllMocks();
  return writes();
}

describe.each(KINDS_OF_FAULT)('a device that is %s', (kind) => {
  it('at any one write loses nothing, and stores nothing twice', async () => {
    const count = await writesOf(kind);
    expect(count).toBeGreaterThan(10);
    for (let k = 1; k <= count; k++) {
      await begunAnew();
      failing(kind, (write) => write === k);
      await practise();
      vi.restoreAllMocks();
      const all = cards(state.log.value!.reviews);
      expect(new Set(all).size, `write ${k}`).toBe(GIVEN.length);
      // What it did not take is written with what comes next.
      const { device: _, n: __, ...like } = state.log.value!.reviews.at(0)!;
      await state.log.value!.append({ ...like, item: 'spot:one more' });
      expect(cards(await onDevice()).slice(0, -1), `write ${k}`).toEqual(all);
    }
  });

  it('from any write on says so, goes on, and gives it all to a file', async () => {
    const count = await writesOf(kind);
    for (let k = 1; k <= count; k++) {
      await begunAnew();
      failing(kind, (write) => write >= k);
      const complaints = await practise();
      const all = cards(state.log.value!.reviews);
      expect(new Set(all).size, `write ${k}`).toBe(GIVEN.length);
      const { text } = await keeping.backupText(1_800_000_000_000);
      const every = {
        decks: () => true,
        drafts: () => true,
        minutes: () => true,
        reports: () => true,
        timings: () => true,
      };
      expect(cards((await readBackup(text, every)).reviews)).toEqual(all);
      const stored = (vi.restoreAllMocks(), cards(await onDevice()));
      if (stored.length < all.length) {
        expect([...complaints].join()).toMatch(/save your log to a file/);
      }
    }
  });
});
