/** What keeps answers comes with the first of them: on a device that has none there is nothing to read. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { readDeck } from '../../src/decks/document.ts';
import { freshPage } from './page.ts';

const LOG = '../../src/store/log.ts';

beforeEach(() => {
  freshPage();
  Object.assign(globalThis, { navigator: { onLine: true } });
});
afterEach(() => vi.doUnmock(LOG));

/** A round on its first card that is asked. */
async function asked() {
  const read = readDeck({
    version: 1,
    title: 'Tuesday',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  const state = await import('../../src/app/state.ts');
  const session = await import('../../src/app/round/session.ts');
  const { trouble } = await import('../../src/app/trouble.ts');
  await state.open();
  const { id } = await state.take(read.deck);
  await session.beginRound(id, 3);
  while (session.shown.value?.presented === 'new') await session.goOn();
  return { state, session, trouble };
}

it('is read with the first answer, and from then on at once', async () => {
  const { state, session } = await asked();
  expect(state.log.value).toBeNull();
  await session.answer('1', 1);
  expect(state.log.value!.reviews.length).toBe(1);
  expect(state.memory.value.of.asked).toBe(1);
  vi.resetModules();
  const again = await import('../../src/app/state.ts');
  await again.open();
  expect(again.log.value!.reviews.length).toBe(1);
  expect(again.memory.value.of.asked).toBe(1);
});

it('that has not come and cannot leaves the card to be answered, and says so', async () => {
  const { state, session, trouble } = await asked();
  vi.doMock(LOG, () => {
    throw new TypeError('Failed to fetch');
  });
  const before = session.round.value;
  await session.answer('1', 1);
  expect(session.round.value).toEqual(before);
  expect(session.shown.value!.verdict).toBeNull();
  expect(trouble.value).toMatch(/^Your answer could not be kept\./);
  vi.doUnmock(LOG);
  await session.answer('1', 1);
  expect(state.log.value!.reviews.length).toBe(1);
});
