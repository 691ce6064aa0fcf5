/**
 * Which rule for the next card serves whom, how true is what is shown, and what a class tells: `npm run simulate`.
 * Simulated students with hidden memories of four laws, none of them the app's, practise a deck of 150 items for eight
 * weeks. Printed of each rule is the mean over the deck's kinds of the percentage known in each at the eight lessons, with
 * its standard error over the students; the paired differences from asking in turn, and from asking in turn where what is new
 * is shown first; and each kind's difference from asking the kinds by turns. The same seeds give the same figures on every
 * machine.
 *
 * Behind `npm run simulate --` may stand: `tune`, the students that choices were made on (reported are others, drawn wider);
 * `full`, more of them; `rules`, `forecasts`, `class`, a part alone; `4` or `10`, rules at so many minutes a day alone;
 * names of rules. By default all of it in about a quarter of an hour.
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

const TUNED = { seed: 3000, spread: 1.3 };
const REPORTED = { seed: 71_000, spread: 1.5 };
/** How many students each part has, of each law. */
const COUNTS = { rules: 20, forecasts: 12, class: 12 };
const FULL = { rules: 40, forecasts: 40, class: 40 };

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

const wishes = process.argv.slice(2);
const drawn = wishes.includes('tune') ? TUNED : REPORTED;
const counts = wishes.includes('full') ? FULL : COUNTS;
const names = Object.keys(policies).filter((name) => wishes.includes(name));
const parts = ['rules', 'forecasts', 'class'].filter((part) => wishes.includes(part));
const isAll = parts.length === 0 && names.length === 0;
const minutesADay = [4, 10].filter((minutes) => wishes.includes(String(minutes)));
const items = deckOf150();
const started = performance.now();

if (isAll || parts.includes('rules') || names.length > 0) {
  console.log(`Rules, ${counts.rules} students of each law`);
  for (const minutes of minutesADay.length > 0 ? minutesADay : [4, 10]) {
    for (const [student, make] of Object.entries(students)) {
      console.log(`\n${minutes} minutes a day, ${student}`);
      rules(make, minutes);
    }
  }
}
if (isAll || parts.includes('forecasts')) {
  console.log(
    `\nWhat is shown, against what is then known, ${2 * counts.forecasts} students a law`,
  );
  for (const [student, make] of Object.entries(students))
    console.log(forecastsOf(student, make, items, { ...drawn, count: counts.forecasts }));
}
if (isAll || parts.includes('class')) {
  console.log(`\nMarks from a class of 20 after a week, to ${counts.class} new students a law`);
  for (const [student, make] of Object.entries(students))
    console.log(marksFromAClass(student, make, items, { ...drawn, count: counts.class }));
}
console.log(`\nSeeds from ${drawn.seed}, spread ${drawn.spread}`);
console.log(`${((performance.now() - started) / 1000).toFixed(0)} s`);

function rules(make: MakeHidden, minutes: number): void {
  const turns = [roundRobin, roundRobinShown, roundRobinOverKinds].map((policy) =>
    outcomes(make, policy, minutes),
  ) as Turns;
  for (const name of names.length > 0 ? names : Object.keys(policies))
    console.log(row(name, outcomes(make, policies[name]!, minutes), turns));
}

/** Asking in turn, the same with what is new shown first, and the kinds by turns. */
type Turns = [Outcome[], Outcome[], Outcome[]];

function outcomes(make: MakeHidden, policy: MakePolicy, minutes: number): Outcome[] {
  const { seed, spread } = drawn;
  return Array.from({ length: counts.rules }, (_, k) =>
    play({ make, policy, items, minutes, seed: seed + k, spread }),
  );
}

function row(name: string, those: readonly Outcome[], [robin, shownFirst, kinds]: Turns): string {
  const known = meanAndError(those.map((one) => one.known));
  const over = (others: readonly Outcome[]) =>
    signed(meanAndError(those.map((one, k) => one.known - others[k]!.known))).padEnd(12);
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
  return `${name.padEnd(13)} ${figure(known)}  ${over(robin)} ${over(shownFirst)} kinds ${byKind.join(' ')}  ${week}  ${spent.mean.toFixed(0)} min`;
}
