/** How true the chances are that are shown: of every item asked so far, at moments ahead, against the hidden memory. */
import { recall } from '../../../src/memory/memory.ts';
import type { Item } from '../../../src/practice/item.ts';
import { ours } from './policies.ts';
import { play } from './run.ts';
import type { MakeHidden } from './students.ts';
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

interface Told {
  readonly student: number;
  readonly shown: number;
  readonly truth: number;
}

interface Drawn {
  readonly seed: number;
  readonly spread: number;
  readonly count: number;
}

export function forecastsOf(
  name: string,
  make: MakeHidden,
  items: readonly Item[],
  { seed, spread, count }: Drawn,
): string {
  const told = new Map(Object.keys(MOMENTS).map((moment) => [moment, [] as Told[]]));
  for (const minutes of [4, 10]) {
    for (let k = 0; k < count; k++) {
      play({
        make,
        policy: ours,
        items,
        minutes,
        seed: seed + k,
        spread,
        watch(day, hidden, memory) {
          if (day % EVERY !== 0) return;
          for (const [moment, at] of Object.entries(MOMENTS)) {
            const then = at(day);
            items.forEach(({ id }, i) => {
              const shown = recall(memory, id, then);
              if (shown === null) return;
              told.get(moment)!.push({
                student: 2 * k + (minutes > 4 ? 1 : 0),
                shown,
                truth: hidden.chance(i, then),
              });
            });
          }
        },
      });
    }
  }
  const all = [...told.values()].flat();
  return [...told, ['all', all] as const]
    .map(([moment, some]) => line(`${name}, ${moment}`, some))
    .join('\n');
}

function line(name: string, told: readonly Told[]): string {
  const own = new Map<number, { sum: number; of: number }>();
  for (const { student, truth } of told) {
    const one = own.get(student) ?? { sum: 0, of: 0 };
    own.set(student, { sum: one.sum + truth, of: one.of + 1 });
  }
  const mean = (of: (one: Told) => number) =>
    told.reduce((sum, one) => sum + of(one), 0) / told.length;
  const lossShown = mean(({ shown, truth }) => loss(shown, truth));
  const constant = mean(({ student, truth }) => {
    const { sum, of } = own.get(student)!;
    return loss(sum / of, truth);
  });
  const tenths = Array.from({ length: 10 }, (_, tenth) => {
    const some = told.filter(({ shown }) => Math.min(9, Math.floor(10 * shown)) === tenth);
    if (some.length < told.length / 200) return '.';
    const error = some.reduce((sum, { shown, truth }) => sum + shown - truth, 0) / some.length;
    return `${error > 0 ? '+' : ''}${(100 * error).toFixed(0)}`;
  });
  return `${name.padEnd(24)} log loss ${lossShown.toFixed(3)}, own mean ${constant.toFixed(3)}; error by tenths ${tenths.join(' ')}`;
}

/** The log loss to be expected of a chance where another is true. */
function loss(shown: number, truth: number): number {
  const safe = Math.min(0.99, Math.max(0.01, shown));
  return -truth * Math.log(safe) - (1 - truth) * Math.log(1 - safe);
}
