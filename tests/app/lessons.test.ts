import { beforeEach, describe, expect, it, vi } from 'vitest';
import { freshPage } from './page.ts';

beforeEach(freshPage);

const whole = {
  version: 1,
  title: 'Quay side',
  key: 'Bb major',
  drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
};

/** Puts records straight under the decks' keys, as an earlier version or a fault may have. */
async function stored(records: Readonly<Record<string, unknown>>): Promise<void> {
  const { store, stored: onDevice } = await import('../../src/store/device.ts');
  await store('readwrite', (all) => {
    for (const [id, record] of Object.entries(records)) all.put(record, ['deck', id]);
    return onDevice(all);
  });
}

async function begun() {
  const state = await import('../../src/app/state.ts');
  await state.open();
  return state;
}

const deck = (id: string, document: unknown) => ({ id, document, added: 1, away: false });

describe('a lesson on the device that cannot be read', () => {
  it('keeps neither the app nor the other lessons from opening, and is told of', async () => {
    await stored({
      good: deck('good', whole),
      key: deck('key', { ...whole, title: 'Odd', key: 'C constructor' }),
      none: deck('none', null),
      record: 'no record of a deck',
      nothing: null,
    });
    const { lessons, quarantined, currentLesson } = await begun();
    const { unreadable } = await import('../../src/app/trouble.ts');
    expect(lessons.value.map(({ id }) => id)).toEqual(['good']);
    expect(currentLesson()?.id).toBe('good');
    expect(quarantined.value.map(({ id }) => id).toSorted()).toEqual([
      'key',
      'none',
      'nothing',
      'record',
    ]);
    expect(unreadable.value).toMatch(
      /^The lesson “.?Odd.?” on this device cannot be read: Key: .* Nor can 3 more\. They stay here, untouched; under Lessons you can delete them\.$/,
    );
  });

  it('is set aside where reading it throws, and where its items cannot be made', async () => {
    vi.doMock('../../src/decks/document.ts', async (original) => {
      const document = await original<typeof import('../../src/decks/document.ts')>();
      const readDeck: typeof document.readDeck = (of) => {
        const { title } = of as typeof whole;
        if (title === 'Thrower') throw new RangeError('No check foresaw this.');
        const read = document.readDeck(of);
        return title === 'Itemless' && 'deck' in read
          ? { deck: { ...read.deck, instrument: { ...read.deck.instrument, tuning: ['H9'] } } }
          : read;
      };
      return { ...document, readDeck };
    });
    vi.spyOn(console, 'error').mockImplementation(() => {});
    await stored({
      good: deck('good', whole),
      thrower: deck('thrower', { ...whole, title: 'Thrower' }),
      itemless: deck('itemless', { ...whole, title: 'Itemless' }),
    });
    const { lessons, quarantined, itemsOfLesson } = await begun();
    expect(itemsOfLesson('good').length).toBeGreaterThan(0);
    expect(itemsOfLesson('itemless')).toEqual([]);
    await vi.waitFor(() =>
      expect(quarantined.value.map(({ title }) => title)).toEqual(['Thrower', 'Itemless']),
    );
    expect(lessons.value.map(({ id }) => id)).toEqual(['good']);
    vi.doUnmock('../../src/decks/document.ts');
    vi.restoreAllMocks();
  });
});

describe('deleting a lesson', () => {
  it('takes it off the device, and leaves what was answered', async () => {
    const { readDeck } = await import('../../src/decks/document.ts');
    const state = await begun();
    const session = await import('../../src/app/round/session.ts');
    const read = readDeck(whole);
    if ('fault' in read) throw new Error(read.fault);
    const { id } = await state.take(read.deck);
    await session.beginRound(id, 3);
    while (session.shown.value!.presented === 'new') await session.goOn();
    await session.answer('1', 1);
    await session.end();
    const { deleteLesson } = await import('../../src/app/keptLessons.ts');
    await deleteLesson(id);
    expect(state.currentLesson()).toBeNull();
    expect(state.itemsOfLesson(id)).toEqual([]);
    vi.resetModules();
    const again = await begun();
    expect(again.lessons.value).toEqual([]);
    expect(again.log.value!.reviews.length).toBe(1);
  });
});
