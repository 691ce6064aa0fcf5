/** How true the chances are that are shown: of every item asked so far, at moments ahead, against the hidden memory. */
import { type Memory, recall } from '../../../src/memory/memory.ts';
import type { Item } from '../../../src/practice/item.ts';
import type { Hidden } from './students.ts';
import { DAY, lessonAfter, START } from './world.ts';

const HOUR = 3_600_000;
/** Seen on every fourth evening. */
const EVERY = 4;

const MOMENTS = {
  '1 day': (day: number) => START + (day + 1) * DAY + 8 * HOUR,
  '3 days': (day: number) => START + (day + 3) * DAY + 18 * HOUR,
  '7 days': (day: number) => START + (day + 7) * DAY + 18 * HOUR,
  lesson: (day: number) => lessonAfter(Math.floor((day + 1) / 7)),
};

type Moment = keyof typeof MOMENTS;
export const moments = Object.keys(MOMENTS) as Moment[];

/** What one student was shown for one moment, and what was true: sums over as many chances. */
interface Sums {
  count: number;
  truth: number;
  loss: number;
  /** Of the chances shown from one percent to the next: how many, and how much more was shown than was true. */
  readonly percents: { count: number; error: number }[];
}

/** What one student was shown, by moment. */
export type Tally = Record<Moment, Sums>;

export function emptyTally(): Tally {
  const sums = () => ({
    count: 0,
    truth: 0,
    loss: 0,
    percents: Array.from({ length: 100 }, () => ({ count: 0, error: 0 })),
  });
  return Object.fromEntries(moments.map((moment) => [moment, sums()])) as Tally;
}

/** What one student was shown, whatever the minutes a day. */
export function together(tallies: readonly Tally[]): Tally {
  const all = emptyTally();
  for (const tally of tallies)
    for (const moment of moments) {
      const [sums, more] = [all[moment], tally[moment]];
      sums.count += more.count;
      sums.truth += more.truth;
      sums.loss += more.loss;
      more.percents.forEach(({ count: some, error }, k) => {
        sums.percents[k]!.count += some;
        sums.percents[k]!.error += error;
      });
    }
  return all;
}

/** Counts what is shown at the end of a day, in place. */
export function count(
  tally: Tally,
  items: readonly Item[],
  day: number,
  hidden: Hidden,
  memory: Memory,
): void {
  if (day % EVERY !== 0) return;
  for (const moment of moments) {
    const [at, sums] = [MOMENTS[moment](day), tally[moment]];
    items.forEach(({ id }, i) => {
      const shown = recall(memory, id, at);
      if (shown === null) return;
      const truth = hidden.chance(i, at);
      const percent = sums.percents[Math.min(99, Math.floor(100 * shown))]!;
      sums.count++;
      sums.truth += truth;
      sums.loss += loss(shown, truth);
      percent.count++;
      percent.error += shown - truth;
    });
  }
}

/** So small a share of the chances shown tells nothing of its tenth. */
const LEAST = 1 / 200;

/**
 * One moment over many students: the log loss, that of each one's own mean, and by tenths of what was shown the mean
 * error in points, + where too much was shown, and its standard error; after it the percentage of the chances that lie there.
 * Last the same for ten parts of as many chances each, from those shown lowest up.
 */
export function forecastLine(name: string, students: readonly Tally[], moment: Moment): string {
  const all = students.map((tally) => tally[moment]);
  const total = (of: (sums: Sums) => number) => all.reduce((sum, sums) => sum + of(sums), 0);
  const chances = total(({ count: shown }) => shown);
  const own = total((sums) => sums.count * loss(sums.truth / sums.count, sums.truth / sums.count));
  const tenths = parts(all, (percent) => Math.floor(percent / 10)).map(({ count: some, error }) =>
    some < LEAST * chances ? '.' : `${error}(${((100 * some) / chances).toFixed(0)})`,
  );
  const equal = parts(all, (_, before) => Math.floor((10 * before) / chances)).map(
    ({ count: some, error }) => (some === 0 ? '.' : error),
  );
  const [shown, constant] = [total((sums) => sums.loss) / chances, own / chances];
  return `${name.padEnd(14)} ${moment.padEnd(6)} log loss ${shown.toFixed(3)}, own mean ${constant.toFixed(3)}; ${tenths.join(' ')}; ten parts ${equal.join(' ')}`;
}

/** Ten parts of what lies in each percent: which one it falls into, by its percent and by how many chances come before. */
function parts(
  all: readonly Sums[],
  partOf: (percent: number, before: number) => number,
): { count: number; error: string }[] {
  const members: number[][] = Array.from({ length: 10 }, () => []);
  let before = 0;
  for (let percent = 0; percent < 100; percent++) {
    const some = all.reduce((sum, { percents }) => sum + percents[percent]!.count, 0);
    members[Math.min(9, partOf(percent, before + some / 2))]!.push(percent);
    before += some;
  }
  return members.map((percents) => part(all, percents));
}

/** How many chances lie in some percents; their mean error and its standard error, a student's chances being of a piece. */
function part(all: readonly Sums[], percents: readonly number[]): { count: number; error: string } {
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  const counts = all.map((one) => sum(percents.map((k) => one.percents[k]!.count)));
  const errors = all.map((one) => sum(percents.map((k) => one.percents[k]!.error)));
  const whole = sum(counts);
  const mean = sum(errors) / whole;
  const squares = sum(errors.map((error, k) => (error - mean * counts[k]!) ** 2));
  return {
    count: whole,
    error: `${points(mean)}±${((100 * Math.sqrt(squares)) / whole).toFixed(0)}`,
  };
}

function points(error: number): string {
  return `${error > 0 ? '+' : ''}${(100 * error).toFixed(0)}`;
}

/** The log loss to be expected of a chance where another is true. */
function loss(shown: number, truth: number): number {
  const safe = Math.min(0.99, Math.max(0.01, shown));
  return -truth * Math.log(safe) - (1 - truth) * Math.log(1 - safe);
}
