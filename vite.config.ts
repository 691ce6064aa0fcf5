import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { evaluated } from './src/host/evaluated.ts';
import { page } from './src/host/page.ts';

const port = Number(process.env.PORT ?? 4173);
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  throw new Error('PORT has to be a whole number from 1 to 65535, as in PORT=4180 npm start.');
}

const TESTS = 'tests/**/*.test.ts';
const PURE = ['theory', 'neck', 'decks', 'memory', 'practice', 'making', 'cards', 'outside'].map(
  (room) => `tests/${room}/**/*.test.ts`,
);

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: '../public',
  appType: 'mpa',
  resolve: {
    // Tone asks for a library that makes up for what old browsers lack: those for whom this is built lack none of it.
    alias: {
      'standardized-audio-context': fileURLToPath(
        new URL('src/sound/webAudio.ts', import.meta.url),
      ),
    },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    // Phones of 2017 that are still carried stop at Safari 16.
    target: ['chrome111', 'safari16.4', 'firefox114'],
    modulePreload: false,
    // Small pictures stay files: the content policy allows no data: addresses but for images.
    assetsInlineLimit: 0,
    rolldownOptions: {
      // Tone's files do nothing by themselves that is wanted here, though its package does not say so.
      treeshake: { moduleSideEffects: (id: string) => !id.includes('/node_modules/tone/') },
      output: {
        codeSplitting: {
          // Each comes whole: one script to the first card, what reads a deck, and every kind of card.
          groups: [
            { name: 'first', tags: ['$initial'], priority: 2 },
            { name: 'decks', test: /src\/decks\/(?:link|document)\.ts$/, priority: 1 },
            { name: 'kinds', test: /src\/cards\/index\.ts$/ },
          ],
        },
      },
    },
  },
  plugins: [evaluated('/src/app/readymade.ts'), page()],
  server: { port },
  preview: { port, strictPort: true },
  test: {
    root: '.',
    // Properties run hundreds of cases, and a machine that is shared is slow now and then.
    testTimeout: 30_000,
    // Rooms without clock, chance or browser share their modules in the tests: each is read once, not once a file.
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      { extends: true, test: { name: 'apart', include: [TESTS], exclude: PURE } },
    ],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
  },
});
