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
  /** Of the chances shown from a tenth to the next: how many, and how much more was shown than was true. */
  readonly tenths: { count: number; error: number }[];
}

/** What one student was shown, by moment. */
export type Tally = Record<Moment, Sums>;

export function emptyTally(): Tally {
  const sums = () => ({
    count: 0,
    truth: 0,
    loss: 0,
    tenths: Array.from({ length: 10 }, () => ({ count: 0, error: 0 })),
  });
  return Object.fromEntries(moments.map((moment) => [moment, sums()])) as Tally;
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
      const tenth = sums.tenths[Math.min(9, Math.floor(10 * shown))]!;
      sums.count++;
      sums.truth += truth;
      sums.loss += loss(shown, truth);
      tenth.count++;
      tenth.error += shown - truth;
    });
  }
}

/** So small a share of the chances shown tells nothing of its tenth. */
const LEAST = 1 / 200;

/**
 * One moment over many students: the log loss, that of each one's own mean, and by tenths of what was shown the mean
 * error in points, + where too much was shown; after it the percentage of the chances that lie there.
 */
export function forecastLine(name: string, tallies: readonly Tally[], moment: Moment): string {
  const all = tallies.map((tally) => tally[moment]);
  const total = (of: (sums: Sums) => number) => all.reduce((sum, sums) => sum + of(sums), 0);
  const chances = total(({ count: shown }) => shown);
  const own = total((sums) => sums.count * loss(sums.truth / sums.count, sums.truth / sums.count));
  const tenths = Array.from({ length: 10 }, (_, k) => {
    const some = total((sums) => sums.tenths[k]!.count);
    if (some < LEAST * chances) return '.';
    const error = (100 * total((sums) => sums.tenths[k]!.error)) / some;
    return `${error > 0 ? '+' : ''}${error.toFixed(0)}(${((100 * some) / chances).toFixed(0)})`;
  });
  const [shown, constant] = [total((sums) => sums.loss) / chances, own / chances];
  return `${name.padEnd(14)} ${moment.padEnd(6)} log loss ${shown.toFixed(3)}, own mean ${constant.toFixed(3)}; ${tenths.join(' ')}`;
}

/** The log loss to be expected of a chance where another is true. */
function loss(shown: number, truth: number): number {
  const safe = Math.min(0.99, Math.max(0.01, shown));
  return -truth * Math.log(safe) - (1 - truth) * Math.log(1 - safe);
}
