/** How true it is what would be known by the lesson with so many minutes a day: foretold each evening of a week that is then practised so. */
import type { Memory } from '../../../src/memory/memory.ts';
import { knownAfter } from '../../../src/practice/ahead.ts';
import type { Item } from '../../../src/practice/item.ts';
import { ours } from './policies.ts';
import { play } from './run.ts';
import type { Hidden, MakeHidden } from './students.ts';
import { DAY, lessonAfter, START } from './world.ts';

const HOUR = 3_600_000;

interface Drawn {
  readonly seed: number;
  readonly spread: number;
  readonly count: number;
}

/** An evening's forecast, and what was then known at the lesson; shares of 1. */
interface Told {
  readonly evening: number;
  readonly shown: number;
  readonly truth: number;
}

/** For each evening of the first and the third week: mean error and mean absolute error in points, of decks of 60 and 150 items. */
export function aheadOf(
  name: string,
  make: MakeHidden,
  all: readonly Item[],
  drawn: Drawn,
): string {
  const lines = [];
  for (const size of [60, 150])
    for (const week of [0, 2]) {
      const told = [4, 8].flatMap((minutes) =>
        toldOf(make, all.slice(0, size), minutes, week, drawn),
      );
      lines.push(`${name}, ${size} items, week ${week + 1}`.padEnd(38) + errors(told));
    }
  return lines.join('\n');
}

function toldOf(
  make: MakeHidden,
  items: readonly Item[],
  minutes: number,
  week: number,
  drawn: Drawn,
): Told[] {
  const { seed, spread, count } = drawn;
  return Array.from({ length: count }, (_none, k) => {
    const shown: number[] = [];
    let truth = 0;
    const watch = (day: number, hidden: Hidden, memory: Memory) => {
      const weekday = day - 7 * week;
      if (weekday < 0 || weekday > 5) return;
      if (weekday < 5) shown.push(foretell(items, memory, minutes, week, weekday + 1));
      else truth = mean(items.map((_, i) => hidden.chance(i, lessonAfter(week))));
    };
    play({
      make,
      policy: ours,
      items,
      minutes,
      seed: seed + k,
      spread,
      weeks: week + 1,
      missing: 0,
      watch,
    });
    return shown.map((one, evening) => ({ evening, shown: one, truth }));
  }).flat();
}

/** What the app foretells on an evening for the lesson of its week, from `next` on practised on every day before it. */
function foretell(
  items: readonly Item[],
  memory: Memory,
  minutes: number,
  week: number,
  next: number,
): number {
  const lesson = lessonAfter(week);
  const sittings = [];
  for (let day = next; day < 6; day++) sittings.push(START + (7 * week + day) * DAY + 18 * HOUR);
  const round = { goal: { minutes }, lesson };
  const playing = knownAfter(items, memory, { askable: items, sittings, round, offset: 0 }, lesson);
  for (;;) {
    const { done, value } = playing.next();
    if (done) return value;
  }
}

function errors(told: readonly Told[]): string {
  return [0, 1, 2, 3, 4]
    .map((evening) => {
      const some = told.filter((one) => one.evening === evening);
      const error = mean(some.map(({ shown, truth }) => 100 * (shown - truth)));
      const size = mean(some.map(({ shown, truth }) => 100 * Math.abs(shown - truth)));
      return `${error > 0 ? '+' : ''}${error.toFixed(0)}/${size.toFixed(0)}`.padEnd(8);
    })
    .join('');
}

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
