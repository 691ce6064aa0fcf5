import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { expect, it, vi } from 'vitest';

it('a new lesson is not said to have been changed in another window', async () => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('IDBKeyRange', IDBKeyRange);
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  const { beginDraft, fromElsewhere, openKept } = await import('../../src/app/teach/kept/kept.ts');
  const { PLAIN_DRAFT } = await import('../../src/making/draft.ts');
  const { change, draft } = await import('../../src/app/teach/kept/openDraft.ts');
  await openKept();
  change({ title: 'Tuesday, quay side' });
  fromElsewhere.value = true;
  beginDraft();
  expect(draft.value).toBe(PLAIN_DRAFT);
  expect(fromElsewhere.value).toBe(false);
});
