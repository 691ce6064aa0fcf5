/** What the phone keeps of the last card of each figure (`app/round/timing.ts`), as a report tells it. */
import * as v from 'valibot';
import type { FigureTiming, Timings } from '../../practice/timeTold.ts';
import { loadTimings } from '../../store/timings.ts';
import { reportingTrouble } from '../state.ts';

const Timing = v.object({
  spread: v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(5))),
  drift: v.nullable(v.pipe(v.number(), v.minValue(-1), v.maxValue(1))),
  limps: v.nullable(
    v.object({
      place: v.picklist([2, 3, 4]),
      late: v.pipe(v.number(), v.minValue(-5), v.maxValue(5)),
    }),
  ),
});

/** What was sure of one figure; null where it cannot be read. */
export function readTiming(stored: unknown): FigureTiming | null {
  const read = v.safeParse(Timing, stored);
  return read.success ? read.output : null;
}

/** What is kept; what cannot be read is left out, each by itself. */
export async function readTimings(): Promise<Timings> {
  const stored = (await reportingTrouble(loadTimings())) ?? {};
  return Object.fromEntries(
    Object.entries(stored).flatMap(([figure, one]) => {
      const timing = readTiming(one);
      return timing ? [[figure, timing]] : [];
    }),
  );
}
