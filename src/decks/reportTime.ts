/**
 * What a report tells of time, and of the free minutes:
 *
 *     figures 2, for each: which 3 · highest even tempo 8 · spread 5 · drift 3 · which place limps 2, and if one: late 1 · by 4
 *     free minutes 5, and if any: leaps 5 · longest run 5 · arpeggios outlined 3 · reach 6 · spread 6
 */
import type { BitReader, BitWriter } from './bits.ts';
import type { DrilledFigure } from './deck.ts';
import { DRILLED_FIGURES } from './drills/time.ts';

/** How a figure goes. */
export interface FigureFacts {
  readonly figure: DrilledFigure;
  /** The fastest that was even, quarter notes a minute, 30 to 240; null where none was. */
  readonly tempo: number | null;
  /** Spread of the steps as a fraction of a step on the last card; kept in hundredths up to .3. Null: not told. */
  readonly spread: number | null;
  /** How the last one left the click: above 0 it fell behind. Kept in hundredths up to .03; null where nothing is sure. */
  readonly drift: number | null;
  /** The place in the beat that came off, 2 to 4, and how late, in seconds, kept in steps of 5 ms; null where none did. */
  readonly limps: { readonly place: number; readonly late: number } | null;
}

/** What the free minutes of the last 28 days come to, the mean of the last five. */
export interface MinuteFacts {
  /** How many there were; kept up to 31. */
  readonly count: number;
  /** Leaps among the moves, 0 to 1; kept within .017. */
  readonly leaping: number;
  /** Steps of the longest run, kept up to 31; degrees outlined. */
  readonly run: number;
  readonly outlined: number;
  /** Along the neck, mm; kept in cm up to 63. */
  readonly reach: number;
  /** Spread around the beat, s; kept in steps of 2 ms up to 126. */
  readonly spread: number;
}

/** What is told of time. */
export interface TimeTold {
  /** Each figure once, at most three of them. */
  readonly figures: readonly FigureFacts[];
  /** Null where there were no free minutes. */
  readonly minutes: MinuteFacts | null;
}

/** Of reports that were made before time was told. */
export const NO_TIME: TimeTold = { figures: [], minutes: null };

export const MOST_FIGURES = 3;
/** What stands for a tempo: 0 for none, 1 for this one. */
const SLOWEST = 30;
const FASTEST = 240;
const SPREAD = 30;
const DRIFT = 3;
const LIMP = { step: 0.005, most: 15 } as const;

const within = (value: number, most: number) => Math.max(0, Math.min(most, Math.round(value)));

export function putTime(bits: BitWriter, { figures, minutes }: TimeTold): void {
  bits.put(Math.min(MOST_FIGURES, figures.length), 2);
  for (const one of figures.slice(0, MOST_FIGURES)) putFigure(bits, one);
  bits.put(minutes ? within(minutes.count, 31) : 0, 5);
  if (!minutes || within(minutes.count, 31) === 0) return;
  bits.put(within(31 * minutes.leaping, 31), 5);
  bits.put(within(minutes.run, 31), 5);
  bits.put(within(minutes.outlined, 7), 3);
  bits.put(within(minutes.reach / 10, 63), 6);
  bits.put(within(500 * minutes.spread, 63), 6);
}

function putFigure(bits: BitWriter, { figure, tempo, spread, drift, limps }: FigureFacts): void {
  bits.put(DRILLED_FIGURES.indexOf(figure), 3);
  bits.put(tempo === null ? 0 : 1 + within(tempo - SLOWEST, FASTEST - SLOWEST), 8);
  bits.put(spread === null ? 0 : 1 + within(100 * spread, SPREAD), 5);
  bits.put(DRIFT + (drift === null ? 0 : signed(100 * drift, DRIFT)), 3);
  bits.put(limps ? limps.place - 1 : 0, 2);
  if (!limps) return;
  bits.put(Number(limps.late > 0), 1);
  bits.put(Math.max(1, within(Math.abs(limps.late) / LIMP.step, LIMP.most)), 4);
}

/** Rounded away from 0, where it would be nothing. */
function signed(value: number, most: number): number {
  return Math.sign(value) * Math.max(1, within(Math.abs(value), most));
}

/** Inverts `putTime`; null where it is not what would have been packed. */
export function takeTime(bits: BitReader): TimeTold | null {
  const figures: FigureFacts[] = [];
  for (let count = bits.take(2); count > 0; count--) {
    const one = takeFigure(bits);
    if (!one || figures.some(({ figure }) => figure === one.figure)) return null;
    figures.push(one);
  }
  const count = bits.take(5);
  if (count === 0) return { figures, minutes: null };
  const leaping = bits.take(5) / 31;
  const [run, outlined] = [bits.take(5), bits.take(3)];
  const [reach, spread] = [10 * bits.take(6), bits.take(6) / 500];
  return { figures, minutes: { count, leaping, run, outlined, reach, spread } };
}

function takeFigure(bits: BitReader): FigureFacts | null {
  const figure = DRILLED_FIGURES[bits.take(3)];
  const [tempo, spread, drift, place] = [bits.take(8), bits.take(5), bits.take(3), bits.take(2)];
  const late = place === 0 ? 0 : (bits.take(1) === 1 ? 1 : -1) * bits.take(4) * LIMP.step;
  const isPacked =
    tempo <= 1 + FASTEST - SLOWEST && drift <= 2 * DRIFT && (place === 0 || late !== 0);
  if (!figure || !isPacked) return null;
  return {
    figure,
    tempo: tempo === 0 ? null : tempo - 1 + SLOWEST,
    spread: spread === 0 ? null : (spread - 1) / 100,
    drift: drift === DRIFT ? null : (drift - DRIFT) / 100,
    limps: place === 0 ? null : { place: place + 1, late },
  };
}
