/**
 * Changes the rules of a room, one small change at a time, and counts how many of the changes a test notices: `npm run
 * mutate -- neck`, or parts of it, `npm run mutate -- neck/travel.ts neck/fret.ts`. What was found is kept in
 * `test-results/mutation`, so that the next run tries only what has changed since. With `MUTATE_TABLES=no` what is reckoned
 * once when a module is read, as tables are, is left alone: a change there is tried by every test of the room.
 *
 * StrykerJS brings 166 packages of which nothing else has need: they are installed here, when they are first asked for,
 * and not by `npm ci`.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';

const VERSION = '9.6.1';

const ROOMS = [
  'theory',
  'neck',
  'decks',
  'memory',
  'practice',
  'making',
  'listening',
  'cards',
  'sound',
  'store',
];

const asked = process.argv.slice(2);
const parts = asked.length > 0 ? asked : ROOMS;
const wrong = parts.filter(
  (part) => !ROOMS.includes(part.split('/')[0]) || !existsSync(`src/${part}`),
);
if (wrong.length > 0) {
  console.error(`${wrong.join(', ')}: name a room (${ROOMS.join(', ')}) or what lies in one.`);
  process.exit(1);
}

const Stryker = await stryker();
const scores = [];
// A room after the other: each has tests of its own, and two cores are all that there are.
for (const room of new Set(parts.map(roomOf))) {
  scores.push(
    ...(await scoresOf(
      room,
      parts.filter((part) => roomOf(part) === room),
    )),
  );
}
console.log(scores.map(scoreWords).join('\n'));

function roomOf(part) {
  return part.split('/')[0];
}

async function stryker() {
  if (!existsSync('node_modules/@stryker-mutator/vitest-runner')) {
    const packages = ['core', 'vitest-runner'].map((name) => `@stryker-mutator/${name}@${VERSION}`);
    const args = ['install', '--no-save', '--no-audit', '--no-fund', ...packages];
    if (spawnSync('npm', args, { stdio: 'inherit' }).status !== 0) process.exit(1);
  }
  return (await import('@stryker-mutator/core')).Stryker;
}

async function scoresOf(room, some) {
  process.env.MUTATED = some.join(' ');
  const mutants = await new Stryker({
    mutate: some.map((part) => (isFile(part) ? `src/${part}` : `src/${part}/**/*.ts`)),
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/mutate.config.ts', related: false },
    concurrency: Number(process.env.MUTATE_WORKERS ?? 2),
    ignoreStatic: process.env.MUTATE_TABLES === 'no',
    incremental: true,
    incrementalFile: `test-results/mutation/${room}.json`,
    tempDirName: 'test-results/mutation/copy',
    ignorePatterns: ['dist', 'test-results', 'node_modules'],
    // It would rewrite tsconfig.json with the TypeScript that there was before 7; nothing here is compiled by that.
    tsconfigFile: 'none',
    reporters: ['clear-text', 'progress-append-only'],
    clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
    // A change that loops is told by how often it is come by; a slow machine is not to be taken for one.
    timeoutMS: 20_000,
    timeoutFactor: 4,
    allowEmpty: true,
  }).runMutationTest();
  const counted = (part) => {
    const own = mutants.filter(({ fileName }) => fileName.includes(`src/${part}`));
    const count = (...of) => own.filter(({ status }) => of.includes(status)).length;
    return { part, noticed: count('Killed', 'Timeout'), missed: count('Survived', 'NoCoverage') };
  };
  return [...some, ...(some.length > 1 ? [`${room}/`] : [])].map(counted);
}

function isFile(part) {
  return statSync(`src/${part}`).isFile();
}

function scoreWords({ part, noticed, missed }) {
  const of = noticed + missed;
  return `${part}: ${((100 * noticed) / of).toFixed(1)} % of ${of} changes noticed, ${missed} not`;
}
