import { defineConfig } from 'vitest/config';
import { isKind, KIND_NAMES } from '../src/decks/kinds.ts';

const mutated = (process.env.MUTATED ?? '').split(' ');
const room = mutated[0]!.split('/')[0]!;

const PURE = ['theory', 'neck', 'decks', 'memory', 'practice', 'making', 'cards'];

/**
 * Files that go through thousands of cases: run once for each change they would take days. One of them is taken where what
 * is changed bears its name.
 */
const LONG = [
  'cards/guessing',
  'cards/everywhere',
  'cards/cards',
  'cards/new-kind',
  'cards/drawn',
  'cards/byStep',
  'cards/instruments',
  'decks/hostile',
  'decks/cost',
  'practice/students',
  'practice/untilReady',
  'practice/killed',
  'sound/string',
  'theory/analysis',
  'theory/variations',
  'neck/hand',
  'neck/shapes',
  'outside/neck-grips',
  'outside/neck-arpeggios',
  'outside/neck-drawn',
  'outside/neck-fingering',
  'theory/analysis-told',
  'theory/analysis-long',
  'theory/timing/proof',
  'outside/theory-libraries',
  'outside/decks-verovio',
  'outside/cards-chords',
].filter((file) => !mutated.some((part) => part.includes('/') && file.includes(nameOf(part))));

/** Where kinds of card alone are changed, the tests of other kinds say nothing of them. */
const changed = mutated.map((part) => part.split('/')[1] ?? '');
const OTHERS = room === 'cards' && changed.every(isKind) ? KIND_NAMES.filter(isUnchanged) : [];

function isUnchanged(kind: string): boolean {
  return !changed.includes(kind);
}

function nameOf(part: string): string {
  return part.split('/').at(-1)!.replace('.ts', '');
}

/** What cards say of drills and items is held where screens show it. */
const WORDS = room === 'cards' ? ['tests/app/deck-words.test.ts'] : [];

/** The tests of one room, and those from outside that are named after it. */
export default defineConfig({
  test: {
    include: [`tests/${room}/**/*.test.ts`, `tests/outside/${room}-*.test.ts`, ...WORDS],
    exclude: [...LONG, ...OTHERS.map((kind) => `cards/${kind}`)].map(
      (file) => `tests/${file}.test.ts`,
    ),
    testTimeout: 30_000,
    setupFiles: 'tests/mutate.setup.ts',
    // As in vite.config.ts: modules that are read once a change, not once a file, halve what a change costs.
    isolate: !PURE.includes(room),
  },
});
