import { beforeEach, expect, it, vi } from 'vitest';
import { readDeck } from '../../src/decks/document.ts';
import { reviewOf } from '../memory/reviews.ts';
import { freshPage } from './page.ts';

beforeEach(freshPage);

async function begun(more: { lessonDay?: string } = {}) {
  const read = readDeck({
    version: 1,
    ...more,
    title: 'Tuesday',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  const state = await import('../../src/app/state.ts');
  const session = await import('../../src/app/round/session.ts');
  const { openLog } = await import('../../src/store/log.ts');
  await state.open();
  await state.haveLog();
  const { id } = await state.take(read.deck);
  await session.beginRound(id, 3);
  return { state, session, openLog, asking: () => pastNew(session) };
}

/** Goes on to the next card that is asked. */
async function pastNew(session: typeof import('../../src/app/round/session.ts')) {
  while (session.shown.value?.presented === 'new') await session.goOn();
}

it.each([
  ['2026-12-08', new Date(2026, 11, 8).getTime()],
  ['2026-12-01', null],
  ['2026-11-24', null],
  [undefined, null],
])('a round on 1 December for a lesson on %s looks ahead to %s', async (lessonDay, lesson) => {
  vi.useFakeTimers({ now: new Date(2026, 11, 1, 17, 30), toFake: ['Date'] });
  const { session } = await begun(lessonDay === undefined ? {} : { lessonDay });
  expect(session.round.value).toMatchObject({ lesson, started: Date.now() });
  vi.useRealTimers();
});

it('learns each answer once, whatever another window answers meanwhile', async () => {
  const { state, session, openLog, asking } = await begun();
  const other = await openLog();
  for (let k = 0; k < 4; k++) {
    await asking();
    const { device: _, n: __, ...theirs } = reviewOf({ item: `spot:other:${k}`, at: Date.now() });
    await Promise.all([other.append(theirs), session.answer('1', 1)]);
    await vi.waitFor(() => expect(state.log.value!.reviews.length).toBe(2 * (k + 1)));
    expect(state.memory.value.of.asked).toBe(2 * (k + 1));
    await session.draw();
  }
});

it('meets one card at a time, though Next is tapped once more before the next is there', async () => {
  const { session } = await begun();
  const going = session.goOn();
  while (!session.round.value!.open) await Promise.resolve();
  const done: string[] = [];
  const again = session.goOn().then(() => done.push('again'));
  await Promise.all([going.then(() => done.push('once')), again]);
  expect(session.round.value!.met).toHaveLength(1);
  // No card is shown before the device has the round with it.
  expect(done).toEqual(['once', 'again']);
});

it('takes one answer to a card, though the verdict is yet to come', async () => {
  const { state, session, asking } = await begun();
  await asking();
  await Promise.all([session.answer('1', 1), session.answer('2', 1)]);
  expect(state.log.value!.reviews.length).toBe(1);
  expect(session.round.value!.asked).toHaveLength(1);
});

it('goes on with another card where one cannot be drawn or shown, and logs nothing of it', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const { state, session } = await begun();
  const { KINDS } = await import('../../src/cards/index.ts');
  const broken = session.shown.value!.card.item.id;
  const { ask } = KINDS.spot;
  vi.spyOn(KINDS.spot, 'ask').mockImplementation((item, seed) => {
    if (item.id === broken) throw new RangeError('There is nothing to pick from.');
    return ask(item, seed);
  });
  await session.draw();
  expect(session.shown.value!.card.item.id).not.toBe(broken);
  expect(session.round.value!.open!.item).toBe(session.shown.value!.card.item.id);
  const { failed } = await import('../../src/app/round/askable.ts');
  expect(failed.value.map(({ id }) => id)).toEqual([broken]);

  const { card } = session.shown.value!;
  await session.skip(card, new Error('The screen threw.'));
  expect([broken, card.item.id]).not.toContain(session.shown.value!.card.item.id);
  expect(session.round.value!.asked).toEqual([]);
  expect(state.log.value!.reviews.length).toBe(0);

  vi.spyOn(KINDS.spot, 'ask').mockImplementation(() => {
    throw new RangeError('None can be drawn.');
  });
  await session.skip(session.shown.value!.card, new Error('The screen threw.'));
  expect(session.shown.value).toBeNull();
  vi.restoreAllMocks();
});

it('shows what is new, logs nothing of it, and asks it two cards later', async () => {
  const { state, session } = await begun();
  const first = session.shown.value!;
  expect(first.presented).toBe('new');
  expect(first.explanation!.sentence).not.toBe('');
  await session.answer('1', 1);
  expect(state.log.value!.reviews.length).toBe(0);
  await session.goOn();
  expect(session.shown.value!.card.item.id).not.toBe(first.card.item.id);
  await session.goOn();
  expect(session.shown.value!.card.item.id).toBe(first.card.item.id);
  expect(session.shown.value!.presented).toBeNull();
  expect(state.log.value!.reviews.length).toBe(0);
});

it('shows a card on demand, as not known and taken for nothing', async () => {
  const { state, session, asking } = await begun();
  await asking();
  await session.answer(null, 1);
  expect([...state.log.value!.reviews]).toMatchObject([{ right: false, takenFor: null }]);
  await vi.waitFor(() => expect(session.shown.value!.presented).toBe('asked for'));
});

it('goes on where it was, and stores each card once, while the clock is set back and ahead a year', async () => {
  const year = 365 * 86_400_000;
  const now = Date.now();
  const clock = vi.spyOn(Date, 'now').mockReturnValue(now);
  let { state, session, asking } = await begun();
  for (const [k, at] of [now, now - year, now + year, now].entries()) {
    clock.mockReturnValue(at + k * 5000);
    await asking();
    await session.answer('1', 1);
    clock.mockReturnValue(at - year + k * 5000);
    await session.goOn();
    // The page is killed, and comes back under yet another clock.
    const { open } = session.round.value!;
    clock.mockReturnValue(at + 3000 + k * 5000);
    vi.resetModules();
    state = await import('../../src/app/state.ts');
    session = await import('../../src/app/round/session.ts');
    const again = session;
    asking = () => pastNew(again);
    await state.open();
    await state.haveLog();
    await session.restore();
    await session.draw();
    expect(session.round.value!.open).toEqual(open);
    expect(session.round.value!.asked).toHaveLength(k + 1);
  }
  const stored = Array.from(state.log.value!.reviews, ({ item, seed }) => `${item} ${seed}`);
  expect(new Set(stored).size).toBe(4);
  expect(stored).toHaveLength(4);
  clock.mockRestore();
});
