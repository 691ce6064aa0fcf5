import * as fc from 'fast-check';
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';

const draft = (id: string, changed: number, some: object = {}) => ({
  id,
  document: { title: `${id} of ${changed}` },
  changed,
  away: false,
  shared: [],
  ...some,
});

async function device() {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  return import('../../src/store/drafts.ts');
}

let drafts: Awaited<ReturnType<typeof device>>;
beforeEach(async () => {
  drafts = await device();
});

describe('the lessons that a teacher makes', () => {
  it('are kept as they were last, the one changed last first', async () => {
    await drafts.keepDraft(draft('a', 1));
    await drafts.keepDraft(draft('b', 2));
    expect((await drafts.listDrafts()).map(({ id }) => id)).toEqual(['b', 'a']);
    await drafts.keepDraft(draft('a', 3, { away: true }));
    expect(await drafts.listDrafts()).toEqual([draft('a', 3, { away: true }), draft('b', 2)]);
  });

  it('have one of them open, or none', async () => {
    expect(await drafts.openDraft()).toBeNull();
    await drafts.makeOpen('a');
    expect(await drafts.openDraft()).toBe('a');
    await drafts.makeOpen(null);
    expect(await drafts.openDraft()).toBeNull();
  });

  it('are told of to another tab, once they are kept', async () => {
    vi.resetModules();
    const other = await import('../../src/store/drafts.ts');
    const heard = new Promise<number>((resolve) => {
      const end = other.watchDrafts(() => {
        end();
        void other.listDrafts().then(({ length }) => resolve(length));
      });
    });
    await drafts.keepDraft(draft('a', 1));
    expect(await heard).toBe(1);
  });

  it('of a backup are told of to another tab, or its next change would undo them', async () => {
    const other = new BroadcastChannel('skipwise drafts');
    const told = new Promise((resolve) => other.addEventListener('message', resolve));
    await drafts.takeDrafts([draft('a', 1)]);
    expect(await told).toBeInstanceOf(MessageEvent);
    other.close();
  });

  it('come back from a backup where they were changed later, and reading it twice changes nothing', async () => {
    const drawn = fc
      .tuple(fc.constantFrom('a', 'b', 'c'), fc.nat({ max: 4 }))
      .map(([id, changed]) => draft(id, changed));
    const some = fc.uniqueArray(drawn, { maxLength: 3, selector: ({ id }) => id });
    await fc.assert(
      fc.asyncProperty(some, some, async (here, file) => {
        const { keepDraft, listDrafts, takeDrafts } = await device();
        for (const one of here) await keepDraft(one);
        const later = file.filter(
          ({ id, changed }) => !here.some((one) => one.id === id && one.changed >= changed),
        );
        expect(await takeDrafts(file)).toBe(later.length);
        const after = await listDrafts();
        expect(await takeDrafts(file)).toBe(0);
        expect(await listDrafts()).toEqual(after);
        for (const one of after) {
          const all = [...here, ...file].filter(({ id }) => id === one.id);
          expect(one.changed).toBe(Math.max(...all.map(({ changed }) => changed)));
        }
        expect(after).toHaveLength(new Set([...here, ...file].map(({ id }) => id)).size);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the decks of a backup', () => {
  it('are taken where they are not here, put away or not as they were', async () => {
    const { keepDeck, listDecks } = await import('../../src/store/decks.ts');
    const { takeDecks } = await import('../../src/store/decksAway.ts');
    await keepDeck('d1', { title: 'here' }, 5);
    const other = { id: 'd2', document: { title: 'there' }, added: 3, away: true };
    expect(await takeDecks([{ ...other, id: 'd1' }, other])).toBe(1);
    expect(await takeDecks([{ ...other, id: 'd1' }, other])).toBe(0);
    expect(await listDecks()).toEqual([
      { id: 'd1', document: { title: 'here' }, added: 5, away: false },
      other,
    ]);
  });
});
