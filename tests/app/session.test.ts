import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, expect, it, vi } from 'vitest';
import { readDeck } from '../../src/decks/document.ts';
import { reviewOf } from '../memory/reviews.ts';

/** As much of a page as a round needs. */
beforeEach(() => {
  vi.resetModules();
  Object.assign(globalThis, {
    indexedDB: new IDBFactory(),
    IDBKeyRange,
    document: { documentElement: { dataset: {} }, addEventListener() {} },
  });
});

async function begun() {
  const read = readDeck({
    version: 1,
    title: 'Tuesday',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  const state = await import('../../src/app/state.ts');
  const session = await import('../../src/app/round/session.ts');
  const { openLog } = await import('../../src/store/log.ts');
  await state.open();
  const { id } = await state.take(read.deck);
  await session.begin(id, 3);
  return { state, session, openLog };
}

it('learns each answer once, whatever another window answers meanwhile', async () => {
  const { state, session, openLog } = await begun();
  const other = await openLog();
  for (let k = 0; k < 4; k++) {
    const { device: _, n: __, ...theirs } = reviewOf({ item: `spot:other:${k}`, at: Date.now() });
    await Promise.all([other.append(theirs), session.answer('1', 1)]);
    await vi.waitFor(() => expect(state.log.value!.reviews.length).toBe(2 * (k + 1)));
    expect(state.memory.value.of.asked).toBe(2 * (k + 1));
    await session.draw();
  }
});

it('takes one answer to a card, though the verdict is yet to come', async () => {
  const { state, session } = await begun();
  await Promise.all([session.answer('1', 1), session.answer('2', 1)]);
  expect(state.log.value!.reviews.length).toBe(1);
  expect(session.round.value!.asked).toHaveLength(1);
});
