import type { Arrangement } from '../../sound/plan.ts';
import { toNumber } from '../../theory/rhythm.ts';
import type { TimePlan } from '../../theory/timing/plan.ts';

/** How a plan is clicked: every word of the count-in, then its clicks. */
export function clicked({ figure, countIn, clicks }: TimePlan): Arrangement {
  const { bar, length } = figure;
  return {
    countIn: bar,
    stretch: { from: 0, to: toNumber(length) },
    clicks: [
      ...countIn.map(({ at, beat }, i) => ({
        at: bar + toNumber(at),
        accent: i === 0 ? ('bar' as const) : beat ? ('beat' as const) : ('between' as const),
        counted: true,
      })),
      ...clicks.map(({ at, first }) => ({
        at: bar + toNumber(at),
        accent: first ? ('bar' as const) : ('beat' as const),
        counted: false,
      })),
    ],
  };
}
