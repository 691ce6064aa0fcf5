/** The days that What you know draws, and the cards marked to ask the teacher about. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { afterAll, beforeEach, expect, it, vi } from 'vitest';
import { emptyMemory } from '../../src/memory/memory.ts';
import type { Item } from '../../src/practice/item.ts';
import { reviewOf } from '../memory/reviews.ts';

const zone = process.env.TZ;
afterAll(() => {
  process.env.TZ = zone ?? 'UTC';
});

beforeEach(() => {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
  vi.stubGlobal('location', { hash: '' });
});

// A bar is the recall on the morning after; it is called by the evening before.
it.each(['Europe/Berlin', 'Pacific/Auckland', 'America/St_Johns'])(
  'in %s each day has its own name, and the last is today',
  async (name) => {
    process.env.TZ = name;
    const { knownByDay } = await import('../../src/app/known/byDay.ts');
    const state = await import('../../src/app/state.ts');
    const local = (day: number, hour: number) => new Date(2026, 10, day, hour).getTime();
    const offset = -new Date(local(26, 12)).getTimezoneOffset();
    const item = 'spot:Bb major:2:triad:guitar:5-4:1-5';
    const reviews = [reviewOf({ item, at: local(26, 18), offset })];
    state.log.value = { reviews } as never;
    state.memory.value = { of: emptyMemory() };
    const days = knownByDay([{ id: item } as Item], local(28, 20));
    expect(days.map((day) => day.name)).toEqual(['26 November', '27 November', 'today']);
    expect(days.map(({ at }) => new Date(at).getHours())).toEqual([8, 8, 8]);
  },
);

it('twenty cards are marked at most, the last ones, and a mark is taken off again', async () => {
  const { questions, restoreQuestions } = await import('../../src/app/round/questions.ts');
  const { toggleQuestion } = await import('../../src/app/round/toggleQuestion.ts');
  for (let k = 1; k <= 21; k++) toggleQuestion(`item ${k}`);
  expect(questions.value).toHaveLength(20);
  expect([questions.value[0], questions.value.at(-1)]).toEqual(['item 2', 'item 21']);
  toggleQuestion('item 5');
  expect(questions.value).toHaveLength(19);
  const { loadQuestions } = await import('../../src/store/questions.ts');
  await vi.waitFor(async () => expect(await loadQuestions()).toEqual(questions.value));
  questions.value = [];
  await restoreQuestions();
  expect(questions.value.slice(0, 4)).toEqual(['item 2', 'item 3', 'item 4', 'item 6']);
});
