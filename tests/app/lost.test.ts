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

it('the host has a newer page where the script that it begins with bears another name', async () => {
  const { isNewerThere } = await import('../../src/app/newer.ts');
  const page = (name: string) => `<script type="module" src="./assets/${name}.js"></script>`;
  vi.stubGlobal('document', {
    querySelector: () => ({ getAttribute: () => './assets/index-a1.js' }),
  });
  const answers = (answer: () => Promise<Partial<Response>>) => vi.stubGlobal('fetch', answer);
  answers(async () => ({ ok: true, text: async () => page('index-b2') }));
  expect(await isNewerThere()).toBe(true);
  answers(async () => ({ ok: true, text: async () => page('index-a1') }));
  expect(await isNewerThere()).toBe(false);
  answers(async () => ({ ok: false, text: async () => 'Not found' }));
  expect(await isNewerThere()).toBe(false);
  answers(() => Promise.reject(new TypeError('offline')));
  expect(await isNewerThere()).toBe(false);
});
