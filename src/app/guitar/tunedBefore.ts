import { localDay } from '../../memory/day.ts';
import { instrumentId, type Instrument } from '../../neck/instrument.ts';
import type { Tuned } from '../settings.ts';
import { settings } from '../state.ts';
import { offset } from './inHand.ts';

/** How the guitar of this round was tuned up; else, where that was today, how it was then. Null where it was not. */
export function tunedBefore(instrument: Instrument, now: number): number | null {
  if (offset.value !== null) return offset.value;
  const { tuned } = settings.value.guitar;
  return tuned && isOfToday(tuned, instrument, now) ? tuned.offset : null;
}

function isOfToday({ at, instrument: id }: Tuned, instrument: Instrument, now: number): boolean {
  const day = (time: number) => localDay(time, -new Date(time).getTimezoneOffset());
  return id === instrumentId(instrument) && day(at) === day(now);
}
