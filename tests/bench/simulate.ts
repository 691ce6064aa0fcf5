/**
 * Which rule for the next card serves whom: `npm run simulate`. Simulated students with hidden memories of four laws,
 * none of them the app's, practise a deck of 150 items for eight weeks under each rule. Printed is the mean percentage
 * known at the eight lessons, with its standard error over the students; and how our mean difference from each other
 * rule compares with its own. The same seeds give the same figures on every machine.
 *
 * `npm run simulate -- tune` runs on the students that choices were made on; reported are others, drawn wider.
 */
import {
  atRandom,
  boxes,
  dueOrder,
  enough,
  type MakePolicy,
  marked,
  oracle,
  ours,
  roundRobin,
} from './simulation/policies.ts';
import { lookBack } from '../../src/memory/forecast.ts';
import { type Outcome, play } from './simulation/run.ts';
import {
  allOrNone,
  type MakeHidden,
  multiscale,
  powerLaw,
  weakPowerLaw,
} from './simulation/students.ts';
import { deckOf150 } from './simulation/world.ts';

const TUNED = { seed: 1000, spread: 1, count: 10 };
const REPORTED = { seed: 20_000, spread: 1.5, count: 20 };

const students: Record<string, MakeHidden> = {
  'power law': powerLaw,
  'weak power law': weakPowerLaw,
  multiscale,
  'all or none': allOrNone,
};

const policies: Record<string, MakePolicy> = {
  ours,
  random: atRandom,
  'round robin': roundRobin,
  boxes,
  'due order': dueOrder,
  'mark, useless': marked(0),
  'mark at .5': marked(0.5),
  'mark at .7': marked(0.7),
  'until enough': enough,
  oracle,
};

const drawn = process.argv.includes('tune') ? TUNED : REPORTED;
const asked = process.argv.slice(2).filter((word) => word in policies);
const names = asked.length > 0 ? asked : Object.keys(policies);
const items = deckOf150();
const started = performance.now();

for (const minutes of [4, 10]) {
  for (const [student, make] of Object.entries(students)) {
    console.log(`\n${minutes} minutes a day, ${student}`);
    const ourOwn = outcomes(make, ours, minutes);
    console.log(forecasts(ourOwn));
    for (const name of names) {
      const those = name === 'ours' ? ourOwn : outcomes(make, policies[name]!, minutes);
      console.log(row(name, those, ourOwn));
    }
  }
}
console.log(`\n${drawn.count} students a row, seeds from ${drawn.seed}, spread ${drawn.spread}`);
console.log(`${((performance.now() - started) / 1000).toFixed(0)} s`);

function outcomes(make: MakeHidden, policy: MakePolicy, minutes: number): Outcome[] {
  const { seed, spread, count } = drawn;
  return Array.from({ length: count }, (_, k) =>
    play({ make, policy, items, minutes, seed: seed + k, spread }),
  );
}

function row(name: string, those: readonly Outcome[], ourOwn: readonly Outcome[]): string {
  const known = meanAndError(those.map((one) => one.known));
  const less = meanAndError(those.map((one, k) => one.known - ourOwn[k]!.known));
  const spent = meanAndError(those.map((one) => one.minutes));
  const difference = name === 'ours' ? '' : `against ours ${signed(less)}`;
  return `${name.padEnd(14)} ${figure(known)}   ${difference.padEnd(28)} ${spent.mean.toFixed(0)} minutes`;
}

/** Log loss of what the app foretold of answers on another day, less is better. */
function forecasts(those: readonly Outcome[]): string {
  const backs = those.flatMap(({ memory }) => lookBack(memory) ?? []);
  const loss = (of: 'ours' | 'uncorrected' | 'constant') =>
    figure(meanAndError(backs.map((back) => back[of])), 3);
  return `forecast: log loss ${loss('ours')}, uncorrected ${loss('uncorrected')}, constant mean ${loss('constant')}`;
}

function meanAndError(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((a, b) => a + b) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / (values.length - 1) / values.length) };
}

function figure({ mean, error }: { mean: number; error: number }, places = 1): string {
  return `${mean.toFixed(places).padStart(5)} ± ${error.toFixed(places)}`;
}

function signed(value: { mean: number; error: number }): string {
  return value.mean > 0 ? `+${figure(value).trim()}` : figure(value).trim();
}
