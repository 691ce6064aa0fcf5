import type { Hold } from './effort.ts';
import type { FretDistances } from './fret.ts';
import * as W from './weights.ts';

/** What lies between two notes. */
export interface Gap {
  /** 1 for half a beat and less, falling with the root of the time: there is time to move. */
  readonly haste: number;
  /** The second sounds the same pitch. */
  readonly repeated: boolean;
  /** The first should still sound when the second begins. */
  readonly rings: boolean;
}

/** What shifts on a neck cost at the least, by kind and hands, each reckoned when it is first asked for; until then 0. */
export interface Shifts {
  readonly neck: FretDistances;
  readonly least: Float64Array;
}

export function shiftsOn(neck: FretDistances): Shifts {
  return { neck, least: new Float64Array(KINDS.length * neck.length ** 2) };
}

/**
 * What it costs to go from one hold to the next, never below 0. Everything is looked at before anything is chosen: a
 * machine that has become quick at some choices begins anew at the first other one.
 */
export function stepCost(shifts: Shifts, from: Hold, to: Hold, gap: Gap): number {
  const { haste, repeated, rings } = gap;
  const frets = Math.abs(from.fret - to.fret);
  const strings = Math.abs(from.string - to.string);
  const crosses = strings > 0;
  const isHand = from.hand === to.hand;
  const leaps = frets >= 3;
  const same = from.finger === to.finger;
  const isOpen = from.finger === 0 || to.finger === 0;
  const change = W.stringChange + W.stringCrossed * (strings - 1);
  const beside = W.openBeside * Math.max(0, from.fret - 3, to.fret - 3);
  const fingers = (same ? oneFinger(from, to) : twoFingers(from, to, haste)) * haste;
  return (
    (isHand ? 0 : shiftCost(shifts, from, to) * haste) +
    (to.barre && !from.barre ? W.barreLaid : 0) * haste +
    (crosses ? change : leaps ? W.leapOnString : 0) +
    (!crosses && rings && !repeated ? W.cutRinging : 0) +
    (crosses && repeated ? W.repeatedElsewhere : 0) +
    (repeated && !same ? W.repeatedFinger : 0) +
    (isOpen ? beside : fingers)
  );
}

function shiftCost(shifts: Shifts, from: Hold, to: Hold): number {
  return (
    leastShift(shifts, from, to) +
    (to.barre && from.barre ? W.barreLaid / 2 : 0) +
    (to.barre || from.barre ? W.barreShifted : 0)
  );
}

/**
 * What a shift costs at the least, without haste: its way, and its start, which an open string on either side eases, and
 * a finger that stays on its string.
 */
export function leastShift({ neck, least }: Shifts, from: Hold, to: Hold): number {
  const { finger, hand } = from;
  const led = finger === to.finger && from.string === to.string ? 1 : 2;
  const kind = finger === 0 || to.finger === 0 ? 0 : led;
  const at = (kind * neck.length + hand) * neck.length + to.hand;
  return (least[at] ||= travel(Math.abs(neck[hand]! - neck[to.hand]!), KINDS[kind]!));
}

/**
 * How far, in mm, the hand goes over the thumb, about a fret: farther, and the thumb lets go of the neck. A finger that
 * stays on its string leads it a fret farther (`FAR_GUIDED`). What lies beyond costs less for this much than a shift does
 * to start, so that one far shift is not played as two.
 */
const FAR = 36;
const FAR_GUIDED = 60;

const KINDS = [W.shiftOpen, W.shiftGuided, W.shift] as const;

function travel(way: number, kind: (typeof KINDS)[number]): number {
  const far = kind === W.shiftGuided ? FAR_GUIDED : FAR;
  const beyond = Math.max(0, (way - far) / 100);
  const away = kind === W.shift ? beyond : beyond * beyond;
  return kind[0] + (kind[1] * way) / 36 + kind[2] * away;
}

function oneFinger(from: Hold, to: Hold): number {
  const isString = from.string === to.string;
  const isFret = from.fret === to.fret;
  const isHand = from.hand === to.hand;
  const isIndex = from.finger === 1;
  if (isString) return isFret || !isHand ? 0 : W.slide;
  if (!isFret) return W.fingerJumped;
  if (!isIndex) return W.fingerRolled;
  return from.barre && to.barre ? 0 : W.indexRolled;
}

function twoFingers(from: Hold, to: Hold, haste: number): number {
  const low = from.finger < to.finger ? from : to;
  const high = low === from ? to : from;
  const frets = high.fret - low.fret;
  const isHand = from.hand === to.hand;
  const isAbove = high.string > low.string;
  // Index and ring finger, or second and fourth, over the frets of one string that ask for a finger more.
  const isWide = high.finger - low.finger === 2 && frets === 3;
  return (
    W.pair[low.finger * 5 + high.finger]! / haste +
    (isWide && from.string === to.string ? W.strained : 0) +
    (isHand && frets < 0 ? W.crossed : 0) +
    (isHand && isAbove && frets === 0 ? W.reversed : 0)
  );
}
