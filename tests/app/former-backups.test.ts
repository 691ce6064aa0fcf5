import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { describe, expect, test, vi } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { writeDeck } from '../../src/decks/document.ts';
import { deckOf } from '../../src/making/draft.ts';
import { BACKUPS, LESSONS } from '../decks/written.ts';

/** The app as it begins on a device that has nothing. */
async function beginAnew() {
  vi.resetModules();
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('IDBKeyRange', IDBKeyRange);
  vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
  vi.stubGlobal('location', { hash: '' });
  vi.stubGlobal('addEventListener', () => {});
  const state = await import('../../src/app/state.ts');
  const { takeBackup } = await import('../../src/app/settings/keeping.ts');
  await state.open();
  await state.haveLog();
  return { ...state, take: (text: string) => takeBackup(text, async () => {}) };
}

/** What the lines of a backup hold of a sort. */
const linesOf = <T>(text: string, sort: string) =>
  text.split('\n').flatMap((line) => {
    const held = line === '' ? {} : (JSON.parse(line) as Record<string, T>);
    return held[sort] === undefined ? [] : [held[sort]];
  });

/** The lesson that the draft of each was made of, by what it is called. */
const made = (title: string) =>
  LESSONS.find(({ document }) => (document as { title: string }).title === title)!;

describe('a backup', () => {
  test('is there of every version', () => {
    expect([...new Set(BACKUPS.map(({ version }) => version))]).toEqual([1, 2, 3, 4]);
  });

  test('that was read is shown at once, and saved again it has all that it had', async () => {
    const { text } = BACKUPS.at(-1)!;
    const app = await beginAnew();
    await app.take(text);
    const { kept } = await import('../../src/app/teach/kept/kept.ts');
    expect(kept.value).toHaveLength(1);
    const { backupText } = await import('../../src/app/settings/keeping.ts');
    const saved = await backupText(1_800_000_000_000);
    expect(saved).toMatchObject({ left: 0, isWhole: true });
    for (const sort of ['review', 'deck', 'draft', 'report', 'minute', 'timing', 'aside']) {
      expect(linesOf(text, sort).length, sort).toBeGreaterThan(0);
      expect(linesOf(saved.text, sort), sort).toEqual(linesOf(text, sort));
    }
  });

  test.each(BACKUPS)(
    'as version $version wrote it gives its answers, lessons, drafts and reports',
    async ({ version, text }) => {
      const app = await beginAnew();
      const ofATeacher = version > 1 ? 1 : 0;
      const counts = { decks: 1, drafts: ofATeacher, reports: ofATeacher };
      const since = { minutes: version > 2 ? 1 : 0, timings: version > 3 ? 1 : 0 };
      expect(await app.take(text)).toEqual({ reviews: 12, ...counts, ...since });
      expect([...app.log.value!.reviews]).toEqual(linesOf(text, 'review'));
      expect(app.log.value!.quarantined).toHaveLength(1);
      const [lesson] = app.lessons.value;
      expect(writeDeck(lesson!.deck)).toEqual(LESSONS[0]!.document);
      expect(itemsOf(lesson!.deck).map(({ id }) => id)).toEqual(LESSONS[0]!.items);
      // Every answer is on an item that the lesson asks today.
      for (const { item } of app.log.value!.reviews) expect(LESSONS[0]!.items).toContain(item);

      const { kept, readKept } = await import('../../src/app/teach/kept/kept.ts');
      await readKept();
      for (const { draft } of kept.value!) {
        const deck = deckOf(draft);
        expect(itemsOf(deck).map(({ id }) => id)).toEqual(made(draft.title).items);
      }
      expect(kept.value).toHaveLength(ofATeacher);
      expect(await app.take(text)).toMatchObject({ reviews: 0, decks: 0, drafts: 0, reports: 0 });
    },
  );

  test('of the next version says that it needs the newer program', async () => {
    const app = await beginAnew();
    const { text } = BACKUPS.at(-1)!;
    await expect(app.take(text.replace('"version":4', '"version":5'))).rejects.toThrow(
      'saved by a newer version of Skipwise. Update this page',
    );
  });

  test('with a lesson, a draft or a report of a newer version says so, and changes nothing', async () => {
    const app = await beginAnew();
    const { text } = BACKUPS.at(-1)!;
    const { sealLink } = await import('../../src/decks/seal.ts');
    const report = sealLink('report', '', 9, new Uint8Array(12));
    const newer = [
      ['lesson', text.replace('"document":{"version":1', '"document":{"version":99')],
      ['lesson', text.replace('"lesson":{"version":1', '"lesson":{"version":99')],
      ['report', text.replace(/#\/report\/[\w-]+/, report)],
    ] as const;
    for (const [word, file] of newer) {
      expect(file).not.toBe(text);
      await expect(app.take(file)).rejects.toThrow(
        `holds a ${word} made with a newer version of Skipwise. Nothing was changed: update this page`,
      );
    }
    expect(app.lessons.value).toEqual([]);
    expect(app.log.value!.reviews.length).toBe(0);
  });
});
