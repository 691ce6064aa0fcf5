import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { expect, it, vi } from 'vitest';
import { writeBackup } from '../../src/store/backup.ts';
import { reviewOf } from '../memory/reviews.ts';

const lesson = {
  version: 1,
  title: 'Four strings alike',
  key: 'C major',
  drills: [{ kind: 'spot', sizes: ['triad'], strings: ['4-3-2-1'], frets: [0, 1] }],
};
const FOUR_ALIKE = {
  name: 'four strings',
  tuning: ['C4', 'C4', 'C4', 'C4'],
  frets: 12,
  scaleLength: 500,
  capo: 11,
};

/** A file with these lessons and an answer. */
const fileOf = (...documents: object[]) =>
  writeBackup(
    {
      decks: documents.map((document, k) => ({ id: `d${k}`, document, added: k + 1, away: false })),
      reviews: [reviewOf({ n: 1 })],
      drafts: [],
      reports: [],
      minutes: [],
      timings: [],
      quarantined: [],
    },
    1_800_000_000_000,
  );

it('a backup with a lesson that has nothing to ask is refused with its line, and nothing of it is taken in', async () => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('IDBKeyRange', IDBKeyRange);
  vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
  vi.stubGlobal('location', { hash: '' });
  vi.stubGlobal('addEventListener', () => {});
  const { haveLog, lessons, open } = await import('../../src/app/state.ts');
  const { takeBackup } = await import('../../src/app/settings/keeping.ts');
  await open();
  const shares: number[] = [];
  const pace = async (done: number) => void shares.push(done);
  const unaskable = { ...lesson, instrument: FOUR_ALIKE };
  await expect(takeBackup(fileOf(lesson, unaskable), pace)).rejects.toThrow(
    'Line 3 of this backup holds no lesson that can be read. Nothing was changed.',
  );
  expect((await haveLog()).reviews.length).toBe(0);
  expect(lessons.value).toEqual([]);

  shares.length = 0;
  expect(await takeBackup(fileOf(lesson), pace)).toMatchObject({ decks: 1, reviews: 1 });
  // Each lesson is checked in a slice of its own.
  expect(shares).toHaveLength(1);
});
