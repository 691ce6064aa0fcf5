/** An answer is on the device before its verdict is seen, and what is stored of it is true. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { readDeck } from '../../src/decks/document.ts';
import { freshPage } from './page.ts';

const zone = process.env.TZ;

beforeEach(freshPage);

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

async function asked(drill: object) {
  const read = readDeck({ version: 1, title: 'Tuesday', key: 'Bb major', drills: [drill] });
  if ('fault' in read) throw new Error(read.fault);
  const state = await import('../../src/app/state.ts');
  const session = await import('../../src/app/round/session.ts');
  await state.open();
  await state.haveLog();
  const { id } = await state.take(read.deck);
  await session.beginRound(id, 3);
  while (session.shown.value?.presented === 'new') await session.goOn();
  return { state, session };
}

const SPOT = { kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] };

it('the verdict is not shown before the log has the answer, however long that takes', async () => {
  const { state, session } = await asked(SPOT);
  const log = state.log.value!;
  const append = log.append.bind(log);
  let write!: () => void;
  const held = new Promise<void>((resolve) => (write = resolve));
  vi.spyOn(log, 'append').mockImplementation(async (review) => {
    await held;
    return append(review);
  });
  vi.useFakeTimers({ toFake: ['setTimeout', 'performance'] });
  const answered = session.answer('1', 1);
  await vi.advanceTimersByTimeAsync(5000);
  expect(session.shown.value!.verdict).toBeNull();
  vi.useRealTimers();
  write();
  await answered;
  await vi.waitFor(() => expect(session.shown.value!.verdict).not.toBeNull());
  expect(log.reviews.length).toBe(1);
});

// What the device took to store it has passed already.
it.each([
  [0, 500],
  [180, 320],
  [700, 0],
])('of half a second until the verdict, %i ms later %i are left', async (took, left) => {
  const { state, session } = await asked(SPOT);
  let now = 10_000;
  vi.spyOn(performance, 'now').mockImplementation(() => now);
  const log = state.log.value!;
  const append = log.append.bind(log);
  vi.spyOn(log, 'append').mockImplementation((review) => {
    now += took;
    return append(review);
  });
  const waits: number[] = [];
  const timer = globalThis.setTimeout;
  vi.spyOn(globalThis, 'setTimeout').mockImplementation(((call: () => void, ms?: number) => {
    waits.push(ms ?? 0);
    return timer(call, 0);
  }) as typeof setTimeout);
  await session.answer('1', 1);
  expect(waits.at(-1)).toBe(left);
});

it.each([
  ['Asia/Kolkata', 330],
  ['America/St_Johns', -210],
  ['UTC', 0],
])('in %s an answer is stored with its clock’s offset, %i minutes', async (name, minutes) => {
  process.env.TZ = name;
  vi.useFakeTimers({ now: Date.UTC(2026, 0, 15, 12), toFake: ['Date'] });
  const { state, session } = await asked(SPOT);
  await session.answer('1', 1);
  expect(state.log.value!.reviews.at(-1)!.offset + 0).toBe(minutes);
});

it('what was listened to is stored beside the time that it took, and never more than that', async () => {
  const { state, session } = await asked(SPOT);
  const playing = (ms: number) =>
    ({ stop() {}, done: Promise.resolve(), heard: () => ms }) as never;
  let now = performance.now();
  vi.spyOn(performance, 'now').mockImplementation(() => now);
  await session.draw();
  session.addSounded(playing(1200));
  session.addSounded(playing(700));
  now += 4000;
  await session.answer('1', 3);
  expect(state.log.value!.reviews.at(-1)).toMatchObject({ ms: 4000, sounded: 1900, taps: 3 });
  await session.draw();
  await session.goOn();
  session.addSounded(playing(9000));
  now += 2500.4;
  await session.answer('1', 1);
  expect(state.log.value!.reviews.at(-1)).toMatchObject({ ms: 2500, sounded: 2500, taps: 1 });
});

it('what was near is neither right nor wrong: nothing of it is stored, and it is asked again', async () => {
  const { state, session } = await asked({
    kind: 'pulse',
    figures: ['eighths'],
    tempos: [60],
    clicks: ['beat'],
  });
  const { item } = session.shown.value!.card;
  // Too few taps to say anything.
  await session.answer('0 500', 2);
  await vi.waitFor(() => expect(session.shown.value!.verdict).toMatchObject({ near: true }));
  expect(state.log.value!.reviews.length).toBe(0);
  await session.draw();
  expect(session.shown.value!.card.item.id).toBe(item.id);
});
