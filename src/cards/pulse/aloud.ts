import { countWords } from '../../theory/timing/figure.ts';
import type { TimePlan } from '../../theory/timing/plan.ts';

/** The least time a spoken word takes, in seconds. */
const WORD = 0.4;

/** What is said with each click of the count-in: every word where there is time for it, else the beats alone. */
export function countAloud({ figure, tempo }: TimePlan): (string | null)[] {
  const isSlow = 60 / tempo / figure.division >= WORD;
  return countWords(figure).flatMap(([beat, ...between]) => [
    beat!,
    ...between.map((word) => (isSlow ? word.replace('&', 'and') : null)),
  ]);
}
