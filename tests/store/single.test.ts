import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { keepDeck, listDecks } from '../../src/store/decks.ts';
import { keepAway } from '../../src/store/decksAway.ts';
import { changeQuestions, loadQuestions } from '../../src/store/questions.ts';
import { loadSettings, saveSettings } from '../../src/store/settings.ts';

beforeEach(() => {
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
});

describe('what two windows change', () => {
  it('of the settings, each its own, stays', async () => {
    await Promise.all([saveSettings({ reference: 432 }), saveSettings({ muted: true })]);
    expect(await loadSettings()).toEqual({ reference: 432, muted: true });
  });

  it('of the questions is changed by what is on the device', async () => {
    const add = (item: string) =>
      changeQuestions((before) => [...((before ?? []) as string[]), item]);
    await Promise.all([add('spot:1'), add('spot:2')]);
    expect(await loadQuestions()).toEqual(['spot:1', 'spot:2']);
  });

  it('of a lesson that is practised is not put away by one that only made it', async () => {
    await keepDeck('here', { title: 'practised' }, 1);
    await keepAway('here', { title: 'made' }, 2);
    await keepAway('other', { title: 'made' }, 3);
    expect((await listDecks()).map(({ id, away }) => [id, away])).toEqual([
      ['other', true],
      ['here', false],
    ]);
  });
});
