import { expect, it, vi } from 'vitest';
import { lostSentence } from '../../src/app/lost.ts';

it('a part of the page that did not come is asked for online, or of the newer page, never wrongly', () => {
  vi.stubGlobal('navigator', { onLine: false });
  expect(lostSentence('This screen could not be fetched')).toMatch(/Go online, then load/);
  vi.stubGlobal('navigator', { onLine: true });
  const sentence = lostSentence('This screen could not be fetched');
  expect(sentence).toMatch(/changed since this window was opened: load the page again/);
  expect(sentence).not.toMatch(/Go online/);
});
