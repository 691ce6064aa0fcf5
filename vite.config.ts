import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { evaluated } from './src/host/evaluated.ts';
import { fetching } from './src/host/fetching.ts';
import { page } from './src/host/page.ts';
import { smaller } from './src/host/smaller.ts';
import { tone } from './src/host/tone.ts';

const port = Number(process.env.PORT ?? 4173);
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  throw new Error('PORT has to be a whole number from 1 to 65535, as in PORT=4180 npm start.');
}

const TESTS = 'tests/**/*.test.ts';
const PURE = ['theory', 'neck', 'decks', 'memory', 'practice', 'making', 'cards', 'outside'].map(
  (room) => `tests/${room}/**/*.test.ts`,
);

/** The screens that a student opens, but for Today; and what is done with a backup there. */
const STUDENT =
  /src\/(?:store\/merge|app\/(?:known|settings|calendar|lessons|minute|guitar|neck|round|report\/SendReport))/;

/** How any lesson, a round and settings are read again, as the device or a link has them. */
const STORED = /src\/(?:decks\/(?:link|document)|practice\/storedRound|app\/storedSettings)\.ts$/;

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: '../public',
  appType: 'mpa',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    // Phones of 2017 that are still carried stop at Safari 16.
    target: ['chrome111', 'safari16.4', 'firefox115'],
    modulePreload: false,
    // Small pictures stay files: the content policy allows no data: addresses but for images.
    assetsInlineLimit: 0,
    rolldownOptions: {
      // Most of a build's time is what `smaller` takes, as it should be.
      checks: { pluginTimings: false },
      output: {
        codeSplitting: {
          // Each comes whole: few scripts are smaller than many, and nothing waits for one behind another.
          groups: [
            { name: 'first', tags: ['$initial'], priority: 9 },
            { name: 'lesson', test: /src\/app\/lesson\/Lesson\.tsx$/, priority: 8 },
            { name: 'firstVisit', test: /src\/app\/today\/FirstVisit\.tsx$/, priority: 7 },
            // All that the schema library reads on the way to what is practised.
            { name: 'decks', test: STORED, priority: 7 },
            { name: 'sound', test: /src\/sound\/player\.ts$/, priority: 6 },
            {
              name: 'today',
              test: /src\/(?:app\/today\/(?:LessonToday|GrowthLine)\.tsx|practice\/ahead\.ts)$/,
              priority: 5,
            },
            { name: 'kinds', test: /src\/cards\/index\.ts$/, priority: 4 },
            // What a student opens, and what a teacher makes.
            { name: 'student', test: STUDENT, priority: 3 },
            {
              name: 'teacher',
              test: /src\/(?:app\/(?:teach|report|phrases)|decks\/notation\/musicxml)/,
              priority: 2,
            },
            {
              name: 'log',
              test: /src\/(?:store\/(?:log|pack)|app\/shell\/afterwards)\.ts$/,
              priority: 4,
            },
          ],
        },
      },
    },
  },
  plugins: [tone(), fetching(), evaluated('/src/app/readymade.ts'), smaller(), page()],
  worker: { format: 'es', plugins: () => [smaller()] },
  server: { port },
  preview: { port, strictPort: true },
  test: {
    root: '.',
    // Properties run hundreds of cases, and a machine that is shared is slow now and then.
    testTimeout: 30_000,
    // Every processor: vitest would leave one of them idle, which is half of two.
    maxWorkers: availableParallelism(),
    // Rooms without clock, chance or browser share their modules in the tests: each is read once, not once a file.
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      { extends: true, test: { name: 'apart', include: [TESTS], exclude: PURE } },
    ],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
  },
});
