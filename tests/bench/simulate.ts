/**
 * Which rule for the next card serves whom, how true is what is shown, and what a class tells: `npm run simulate`.
 * Simulated students with hidden memories of four laws, none of them the app's, practise a deck of 150 items for eight
 * weeks. Printed of each rule is the mean over the deck's kinds of the percentage known in each at the eight lessons, with
 * its standard error over the students; the paired differences from asking in turn, from asking in turn where what is new
 * is shown first, and from due order; and each kind's difference from asking the kinds by turns. The same seeds give the
 * same figures on every machine.
 *
 * Behind `npm run simulate --` may stand: `tune`, the students that choices were made on (reported are others, drawn wider);
 * `full`, more of them; `rules`, `forecasts`, `class`, `ahead`, a part alone; `4` or `10`, so many minutes a day alone; names of
 * laws or of rules. By default all of it, on as many threads as there are cores.
 */
import type { ClassGain } from './simulation/class.ts';
import { figure, meanAndError, signed } from './simulation/figures.ts';
import { forecastLine, moments, together } from './simulation/forecasts.ts';
import { type Done, doJob, type Job, laws, type Played, policies } from './simulation/jobs.ts';
import { doneAll, serve } from './simulation/pool.ts';
import type { Outcome } from './simulation/run.ts';

const TUNED = { seed: 3000, spread: 1.3 };
const REPORTED = { seed: 73_000, spread: 1.5 };
/** How many students of each law; of what is shown always the many, for a tenth of it is often from a few of them alone. */
const [COUNT, FULL] = [12, 40];

/** Of so many students one is enough to see how true what is foretold with practice is. */
const AHEAD = 4;

/** What every other rule is measured against. */
const BASES = ['in turn', 'shown first', 'due order'];
const BY_TURNS = 'over kinds';

if (!serve(doJob)) await main(process.argv.slice(2));

async function main(wishes: readonly string[]): Promise<void> {
  const started = performance.now();
  const drawn = wishes.includes('tune') ? TUNED : REPORTED;
  const count = wishes.includes('full') ? FULL : COUNT;
  const named = Object.keys(policies).filter((name) => wishes.includes(name));
  const parts = ['rules', 'forecasts', 'class', 'ahead'].filter((part) => wishes.includes(part));
  const isWanted = (part: string) =>
    parts.includes(part) || (parts.length === 0 && (named.length === 0 || part === 'rules'));
  const wished = [4, 10].filter((minutes) => wishes.includes(String(minutes)));
  const minutesADay = wished.length > 0 ? wished : [4, 10];
  const rows = named.length > 0 ? named : Object.keys(policies);
  const played = new Set(isWanted('rules') ? [...BASES, BY_TURNS, ...rows] : []);
  if (isWanted('forecasts')) played.add('ours');
  const told = isWanted('forecasts') ? FULL : count;

  const some = Object.keys(laws).filter((law) => wishes.includes(law));
  const students = some.length > 0 ? some : Object.keys(laws);

  const results = await simulated([
    ...minutesADay.flatMap((minutes) =>
      students.flatMap((law) =>
        [...played].flatMap((policy) =>
          Array.from({ length: policy === 'ours' ? told : count }, (_, k): Job => {
            const { seed, spread } = drawn;
            return { part: 'rules', law, policy, minutes, seed: seed + k, spread };
          }),
        ),
      ),
    ),
    ...(isWanted('class') ? students : []).map((law): Job => ({
      part: 'class',
      law,
      count,
      ...drawn,
    })),
    ...(isWanted('ahead') ? students : []).map((law): Job => ({
      part: 'ahead',
      law,
      count: count / AHEAD,
      ...drawn,
    })),
  ]);
  if (isWanted('rules')) {
    console.log(`Rules, ${count} students of each law`);
    for (const minutes of minutesADay)
      for (const law of students) {
        console.log(`\n${minutes} minutes a day, ${law}`);
        const of = (policy: string) => results.played(law, policy, minutes).slice(0, count);
        for (const name of rows) console.log(ruleLine(name, of(name), BASES.map(of), of(BY_TURNS)));
      }
  }
  if (isWanted('forecasts')) {
    console.log(
      `\nWhat is shown to ${told} students of each law against what is then known, error by tenths (% of all shown there)`,
    );
    for (const law of students) {
      const all = minutesADay.map((minutes) => results.played(law, 'ours', minutes));
      const tallies = Array.from({ length: told }, (_, k) =>
        together(all.flatMap((those) => those[k]!.tally ?? [])),
      );
      for (const moment of moments) console.log(forecastLine(law, tallies, moment));
    }
  }
  if (isWanted('class')) {
    console.log(`\nMarks from a class of 20 after a week, to ${count} new students a law`);
    for (const law of students) console.log(classLine(law, results.class(law)));
  }
  if (isWanted('ahead')) {
    console.log(
      `\nKnown at the lesson with 4 or 8 minutes a day, foretold on the evenings 1 to 5 of a week: error/absolute error, points, ${(2 * count) / AHEAD} students a law`,
    );
    for (const law of students) console.log(results.ahead(law));
  }
  console.log(`\nSeeds from ${drawn.seed}, spread ${drawn.spread}`);
  console.log(`${((performance.now() - started) / 1000).toFixed(0)} s`);
}

/** Does the jobs, and finds their results again. */
async function simulated(jobs: readonly Job[]) {
  const done = await doneAll<Job, Done>(jobs, new URL(import.meta.url));
  const found = (is: (job: Job) => boolean) => done.filter((_, k) => is(jobs[k]!));
  return {
    played: (law: string, policy: string, minutes: number) =>
      found(
        (job) =>
          job.part === 'rules' &&
          job.law === law &&
          job.policy === policy &&
          job.minutes === minutes,
      ) as Played[],
    ahead: (law: string) => found((job) => job.part === 'ahead' && job.law === law)[0] as string,
    class: (law: string) => found((job) => job.part === 'class' && job.law === law)[0] as ClassGain,
  };
}

function ruleLine(
  name: string,
  those: readonly Played[],
  bases: readonly (readonly Played[])[],
  byTurns: readonly Played[],
): string {
  const known = meanAndError(those.map((one) => one.known));
  const over = (others: readonly Played[]) =>
    signed(meanAndError(those.map((one, k) => one.known - others[k]!.known))).padEnd(12);
  const byKind = [0, 1, 2].map((kind) => {
    const { mean } = meanAndError(
      those.map((one, k) => one.byKind[kind]! - byTurns[k]!.byKind[kind]!),
    );
    return `${mean > 0 ? '+' : ''}${mean.toFixed(1)}`;
  });
  const sum = (of: keyof Outcome['firstWeek']) =>
    those.reduce((all, { firstWeek }) => all + firstWeek[of], 0);
  const week = `week 1: ${((100 * sum('right')) / sum('asked')).toFixed(0)} % right, ${((100 * sum('back')) / Math.max(1, sum('missed'))).toFixed(0)} % of misses back`;
  const spent = meanAndError(those.map((one) => one.minutes));
  return `${name.padEnd(13)} ${figure(known)}  ${bases.map(over).join(' ')} kinds ${byKind.join(' ')}  ${week}  ${spent.mean.toFixed(0)} min`;
}

function classLine(law: string, { marks, answers, alike, more }: ClassGain): string {
  return `${law.padEnd(16)} ${marks} marks from ${answers} answers, correlation with a new student's ${figure(alike, 2).trim()}, gained at 4 minutes ${signed(more)}`;
}
