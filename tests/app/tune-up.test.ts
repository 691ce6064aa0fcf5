/** What is asked of the ear while a guitar is tuned up, and how each string stands on the screen. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { beforeEach, expect, it, vi } from 'vitest';
import { TuneUp } from '../../src/app/guitar/TuneUp.tsx';
import { USUAL, type Settings } from '../../src/app/settings.ts';
import { settings } from '../../src/app/state.ts';
import { GUITAR, INSTRUMENTS, type Instrument } from '../../src/neck/instrument.ts';

const asked = vi.hoisted(() => {
  Object.assign(globalThis, {
    document: { documentElement: { dataset: {} }, addEventListener() {} },
  });
  return [] as [strings: readonly number[], reference: number][];
});
// What a screen does once it is shown is done at once where it is drawn into a text.
vi.mock('preact/hooks', async (original) => ({
  ...(await original<typeof import('preact/hooks')>()),
  useEffect: (done: () => void) => void done(),
}));
vi.mock('../../src/listening/tasks.ts', () => ({
  tuneUp: (strings: readonly number[], reference: number) => {
    asked.push([strings, reference]);
    return { stop() {} };
  },
}));

beforeEach(() => {
  asked.length = 0;
});

function seen(instrument: Instrument, chosen: Partial<Settings> = {}) {
  settings.value = { ...USUAL, ...chosen };
  const html = renderToString(h(TuneUp, { instrument, done() {} }));
  const strings = html.matchAll(
    /data-tune="(\d)" data-state="(\w+)".*?class="name music">([^<]*)</g,
  );
  return {
    strings: Array.from(strings, ([, number, state, name]) => `${number} ${name} ${state}`),
    words: html.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' '),
  };
}

// MIDI, string 1 first: E4 is 64, E2 40.
it.each<[string, Instrument, number, number[]]>([
  ['a guitar', GUITAR, 440, [64, 59, 55, 50, 45, 40]],
  ['one with a capo on fret 3', { ...GUITAR, capo: 3 }, 440, [67, 62, 58, 53, 48, 43]],
  ['one by another reference pitch', GUITAR, 432, [64, 59, 55, 50, 45, 40]],
  ['a bass', INSTRUMENTS.find(({ name }) => name === 'bass')!, 443, [43, 38, 33, 28]],
])('of %s its open strings are asked, as they sound', (_, instrument, reference, strings) => {
  const { words } = seen(instrument, { reference });
  expect(asked).toEqual([[strings, reference]]);
  expect(words).toContain(`A is ${reference} Hz`);
});

it('the strings stand from the highest number down, by what they sound', () => {
  expect(seen({ ...GUITAR, capo: 2 }).strings).toEqual([
    '6 F♯2 unheard',
    '5 B2 unheard',
    '4 E3 unheard',
    '3 A3 unheard',
    '2 C♯4 unheard',
    '1 F♯4 unheard',
  ]);
  const german = seen(GUITAR, { naming: 'german' }).strings;
  expect(german[4]).toBe('2 H3 unheard');
  expect(seen(GUITAR, { naming: 'degrees' }).strings[0]).toBe('6 E2 unheard');
  expect(seen(GUITAR).words).toContain('Pluck one open string after another and let each ring.');
});
