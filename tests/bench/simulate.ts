/**
 * Which rule for the next card serves whom, how true is what is shown, and what a class tells: `npm run simulate`.
 * Simulated students with hidden memories of four laws, none of them the app's, practise a deck of 150 items for eight
 * weeks. Printed is the mean over the deck's kinds of the percentage known in each at the eight lessons, with its
 * standard error over the students; the paired difference from round robin; and each kind's difference from asking the
 * kinds by turns. The same seeds give the same figures on every machine.
 *
 * `npm run simulate -- tune` runs on the students that choices were made on; reported are others, drawn wider.
 */
import { marksFromAClass } from './simulation/class.ts';
import { forecastsOf } from './simulation/forecasts.ts';
import {
  atRandom,
  boxes,
  dueOrder,
  enough,
  type MakePolicy,
  oracle,
  ours,
  roundRobin,
  roundRobinOverKinds,
  roundRobinShown,
} from './simulation/policies.ts';
import { figure, meanAndError, signed } from './simulation/figures.ts';
import { type Outcome, play } from './simulation/run.ts';
import {
  allOrNone,
  type MakeHidden,
  multiscale,
  powerLaw,
  weakPowerLaw,
} from './simulation/students.ts';
import { deckOf150 } from './simulation/world.ts';

const TUNED = { seed: 3000, spread: 1.3, count: 12 };
const REPORTED = { seed: 70_000, spread: 1.5, count: 16 };

const students: Record<string, MakeHidden> = {
  'power law': powerLaw,
  'weak power law': weakPowerLaw,
  multiscale,
  'all or none': allOrNone,
};

const policies: Record<string, MakePolicy> = {
  'round robin': roundRobin,
  'over kinds': roundRobinOverKinds,
  'shown first': roundRobinShown,
  random: atRandom,
  boxes,
  'due order': dueOrder,
  ours,
  'until enough': enough,
  oracle,
};

const drawn = process.argv.includes('tune') ? TUNED : REPORTED;
const asked = process.argv.slice(2);
const names = Object.keys(policies).filter((name) => asked.includes(name));
const items = deckOf150();
const started = performance.now();
const isAll = names.length === 0 && !asked.includes('forecasts') && !asked.includes('class');

if (isAll || names.length > 0) {
  for (const minutes of [4, 10]) {
    for (const [student, make] of Object.entries(students)) {
      console.log(`\n${minutes} minutes a day, ${student}`);
      rules(make, minutes);
    }
  }
}
if (isAll || asked.includes('forecasts')) {
  console.log('\nWhat is shown, against what is then known');
  for (const [student, make] of Object.entries(students))
    console.log(forecastsOf(student, make, items, drawn));
}
if (isAll || asked.includes('class')) {
  console.log('\nMarks from a class of 20 after a week');
  for (const [student, make] of Object.entries(students))
    console.log(marksFromAClass(student, make, items, drawn));
}
console.log(`\n${drawn.count} students a row, seeds from ${drawn.seed}, spread ${drawn.spread}`);
console.log(`${((performance.now() - started) / 1000).toFixed(0)} s`);

function rules(make: MakeHidden, minutes: number): void {
  const robin = outcomes(make, roundRobin, minutes);
  const kinds = outcomes(make, roundRobinOverKinds, minutes);
  const wanted = isAll ? Object.keys(policies) : names;
  for (const name of wanted)
    console.log(row(name, outcomes(make, policies[name]!, minutes), robin, kinds));
}

function outcomes(make: MakeHidden, policy: MakePolicy, minutes: number): Outcome[] {
  const { seed, spread, count } = drawn;
  return Array.from({ length: count }, (_, k) =>
    play({ make, policy, items, minutes, seed: seed + k, spread }),
  );
}

function row(
  name: string,
  those: readonly Outcome[],
  robin: readonly Outcome[],
  kinds: readonly Outcome[],
): string {
  const known = meanAndError(those.map((one) => one.known));
  const more = meanAndError(those.map((one, k) => one.known - robin[k]!.known));
  const byKind = [0, 1, 2].map((kind) => {
    const { mean } = meanAndError(
      those.map((one, k) => one.byKind[kind]! - kinds[k]!.byKind[kind]!),
    );
    return `${mean > 0 ? '+' : ''}${mean.toFixed(1)}`;
  });
  const sum = (of: keyof Outcome['firstWeek']) =>
    those.reduce((all, { firstWeek }) => all + firstWeek[of], 0);
  const week = `week 1: ${((100 * sum('right')) / sum('asked')).toFixed(0)} % right, ${((100 * sum('back')) / Math.max(1, sum('missed'))).toFixed(0)} % of misses back`;
  const spent = meanAndError(those.map((one) => one.minutes));
  return `${name.padEnd(13)} ${figure(known)}  ${signed(more).padEnd(12)} kinds ${byKind.join(' ')}  ${week}  ${spent.mean.toFixed(0)} min`;
}
