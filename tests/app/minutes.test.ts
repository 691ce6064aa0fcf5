import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { GUITAR } from '../../src/neck/instrument.ts';
import { parseKey } from '../../src/theory/key.ts';
import { beats } from '../../src/theory/rhythm.ts';

const figures = {
  tempo: 72,
  notes: 60,
  leftOut: 2,
  leaping: 0.4,
  run: 5,
  outlined: 3,
  reach: 140,
  spread: 0.02,
  pauses: 1,
};
const line = {
  tempo: 72,
  notes: [
    {
      midi: 58,
      name: 'Bb',
      at: beats(1, 3),
      length: beats(2),
      place: { string: 3, fret: 3 },
    },
  ],
};

async function device() {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  Object.assign(globalThis, { document: { documentElement: { dataset: {} } } });
  return import('../../src/app/minute/minutes.ts');
}

let kept: Awaited<ReturnType<typeof device>>;
beforeEach(async () => {
  kept = await device();
});

describe('free minutes', () => {
  const minute = (at: number) => ({ lesson: 'd1', at, figures, line: null });

  it('are kept, the oldest first, and a line is put to one later', async () => {
    await kept.keep(minute(2));
    await kept.keep(minute(1));
    expect(kept.minutes.value!.map(({ at }) => at)).toEqual([1, 2]);
    const deck = kept.lineDeck({ key: parseKey('Bb major')!, instrument: GUITAR }, line);
    await kept.keep({ ...minute(2), line: deck });
    kept.minutes.value = null;
    await kept.openMinutes();
    expect(kept.minutes.value).toEqual([minute(1), { ...minute(2), line: deck }]);
    await kept.remove(minute(1));
    kept.minutes.value = null;
    await kept.openMinutes();
    expect(kept.minutes.value).toHaveLength(1);
  });

  it('of two lessons at one time are two', async () => {
    const other = { ...minute(1), lesson: 'd2' };
    await kept.keep(minute(1));
    await kept.keep(other);
    await kept.keep({ ...minute(1), figures: { ...figures, notes: 61 } });
    expect(kept.minutes.value!.map(({ lesson }) => lesson).toSorted()).toEqual(['d1', 'd2']);
    await kept.remove(minute(1));
    expect(kept.minutes.value).toEqual([other]);
    kept.minutes.value = null;
    await kept.openMinutes();
    expect(kept.minutes.value).toEqual([other]);
  });

  it('that are none are not read', () => {
    const stored = kept.writeMinute(minute(1));
    expect(kept.readMinute(stored)).toEqual(minute(1));
    for (const document of [
      null,
      {},
      { figures, line: {} },
      { figures: { ...figures, leaping: 2 }, line: null },
      { figures: { ...figures, notes: NaN }, line: null },
    ]) {
      expect(kept.readMinute({ ...stored, document })).toBeNull();
    }
  });
});
