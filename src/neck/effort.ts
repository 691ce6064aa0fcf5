import type { FretDistances } from './fret.ts';
import type { Place } from './place.ts';

/** 0 is no finger (an open string), 1 the index. */
export type Finger = 0 | 1 | 2 | 3 | 4;

/** How one note is held: where, by which finger, and where the hand is. */
export interface Hold extends Place {
  readonly finger: Finger;
  /** The position: the fret that the index finger lies over. */
  readonly hand: number;
  /** Whether the index finger lies across the strings at that fret. */
  readonly barre: boolean;
  /** What it costs by itself. */
  readonly cost: number;
}

/**
 * What the left hand dislikes, in one unit of effort. The terms are those of hand travel, finger spread and a liking
 * for low positions (Heijink & Meulenbroek, *Journal of Motor Behavior* 34(4), 2002), minimised over a path as in
 * Sayegh, *Computer Music Journal* 13(3), 1989; the weights were fitted to printed fingerings, of which another part is
 * held against them in tests/outside. Lengths are mm. Lists by finger begin with the index.
 */
export const WEIGHTS = {
  open: 0.479,
  openUp: 0.161,
  finger: [0.013, 0.127, 0.092, 0.281],
  up: 0.129,
  beyondFirst: 0.048,
  beyondTwelfth: 0.187,
  string: [0.03, 0.022, 0.004, 0.05],
  rest: [0, 27, 57, 72],
  stretched: [0, 0.378, 0.673, 0.108],
  bunched: [0, 0.147, 0.171, 0.039],
  reachBack: 1.487,
  barreHeld: 0.092,
  barreLaid: 1.413,
  barreShifted: 0.49,
  shiftOpen: [0.4, 0.142],
  shiftGuided: [1.029, 0.17],
  shift: [1, 0.15],
  stringChange: 0.15,
  stringCrossed: 0.077,
  leapOnString: 0.5,
  cutRinging: 0.321,
  slide: 0.8,
  indexRolled: 0.5,
  fingerRolled: 1.286,
  fingerJumped: 1.5,
  /** By the lower finger, then the higher. */
  pair: [
    [0, 0, 0.062, 0.03],
    [0, 0, 0.026, 0.061],
    [0, 0, 0, 0.106],
  ],
  strained: 0.6,
  crossed: 2.564,
  reversed: 0.537,
  repeatedElsewhere: 0.66,
  repeatedFinger: 0.323,
} as const;

/** Lowest and highest fret under each finger, counted from the hand's. */
const REACH: readonly (readonly [number, number])[] = [
  [-1, 0],
  [0, 2],
  [1, 3],
  [1, 4],
];

/** Every way to hold a note at a place, with the hand at `position` only where that is given. */
export function holdsAt(
  neck: FretDistances,
  { string, fret }: Place,
  highest: number,
  position: number | null,
): Hold[] {
  const holds: Hold[] = [];
  if (fret === 0) {
    for (let hand = position ?? 1; hand <= (position ?? highest); hand++)
      holds.push({ string, fret, finger: 0, hand, barre: false, cost: openCost(neck, hand) });
    return holds;
  }
  for (let finger = 1; finger <= 4; finger++) {
    const [least, most] = REACH[finger - 1]!;
    for (let hand = Math.max(1, fret - most); hand <= fret - least; hand++) {
      if (position !== null && hand !== position) continue;
      const cost = frettedCost(neck, string, fret, finger, hand);
      holds.push({ string, fret, finger: finger as Finger, hand, barre: false, cost });
      if (fret >= hand)
        holds.push({
          string,
          fret,
          finger: finger as Finger,
          hand,
          barre: true,
          cost: cost + WEIGHTS.barreHeld,
        });
    }
  }
  return holds;
}

function openCost(neck: FretDistances, hand: number): number {
  return WEIGHTS.open + (WEIGHTS.openUp * neck[hand - 1]!) / 100;
}

/** What a finger at a fret costs by itself with the hand at `hand`. */
export function frettedCost(
  neck: FretDistances,
  string: number,
  fret: number,
  finger: number,
  hand: number,
): number {
  const w = WEIGHTS;
  const i = finger - 1;
  let cost = w.finger[i]! + (w.up * neck[hand - 1]!) / 100 + (string - 1) * w.string[i]!;
  if (hand > 1) cost += w.beyondFirst;
  if (fret > 12) cost += (w.beyondTwelfth * (neck[fret]! - neck[12]!)) / 36;
  const reach = neck[fret]! - neck[hand]!;
  if (finger === 1) return cost + (w.reachBack * (reach / 10) ** 2) / 8;
  const from = (reach - w.rest[i]!) / 10;
  return cost + ((from > 0 ? w.stretched[i]! : w.bunched[i]!) * from ** 2) / 2;
}

/** What lies between two notes. */
export interface Gap {
  /** 1 for half a beat and less, falling with the root of the time: there is time to move. */
  readonly haste: number;
  /** The second sounds the same pitch. */
  readonly repeated: boolean;
  /** The first should still sound when the second begins. */
  readonly rings: boolean;
}

/** What it costs to go from one hold to the next, never below 0. */
export function stepCost(neck: FretDistances, from: Hold, to: Hold, gap: Gap): number {
  const w = WEIGHTS;
  let cost = from.hand === to.hand ? 0 : shiftCost(neck, from, to) * gap.haste;
  if (to.barre && !from.barre) cost += w.barreLaid * gap.haste;
  if (from.string !== to.string) {
    cost += w.stringChange + w.stringCrossed * (Math.abs(from.string - to.string) - 1);
    if (gap.repeated) cost += w.repeatedElsewhere;
  } else {
    if (Math.abs(from.fret - to.fret) >= 3) cost += w.leapOnString;
    if (gap.rings && !gap.repeated) cost += w.cutRinging;
  }
  if (gap.repeated && from.finger !== to.finger) cost += w.repeatedFinger;
  if (from.finger === 0 || to.finger === 0) return cost;
  return (
    cost +
    (from.finger === to.finger ? sameFinger(from, to) : twoFingers(from, to, gap)) * gap.haste
  );
}

function shiftCost(neck: FretDistances, from: Hold, to: Hold): number {
  const w = WEIGHTS;
  const guided = from.finger === to.finger && from.string === to.string && from.finger !== 0;
  let cost = guided ? travel(neck, from, to, w.shiftGuided) : leastShift(neck, from, to);
  if (to.barre && from.barre) cost += w.barreLaid / 2;
  if (to.barre || from.barre) cost += w.barreShifted;
  return cost;
}

/** What a shift costs at the least, without haste: its way, and its start, which an open string on either side eases. */
export function leastShift(neck: FretDistances, from: Hold, to: Hold): number {
  const open = from.finger === 0 || to.finger === 0;
  return travel(neck, from, to, open ? WEIGHTS.shiftOpen : WEIGHTS.shift);
}

function travel(
  neck: FretDistances,
  from: Hold,
  to: Hold,
  kind: readonly [number, number],
): number {
  return kind[0] + (kind[1] * Math.abs(neck[from.hand]! - neck[to.hand]!)) / 36;
}

function sameFinger(from: Hold, to: Hold): number {
  const w = WEIGHTS;
  if (from.string === to.string)
    return from.fret !== to.fret && from.hand === to.hand ? w.slide : 0;
  if (from.fret !== to.fret) return w.fingerJumped;
  if (from.finger !== 1) return w.fingerRolled;
  return from.barre && to.barre ? 0 : w.indexRolled;
}

function twoFingers(from: Hold, to: Hold, gap: Gap): number {
  const w = WEIGHTS;
  const low = from.finger < to.finger ? from : to;
  const high = low === from ? to : from;
  let cost = w.pair[low.finger - 1]![high.finger - 1]! / gap.haste;
  // Index and ring finger, or second and fourth, over the frets of one string that ask for a finger more.
  if (from.string === to.string && high.fret - low.fret === 3 && high.finger - low.finger === 2)
    cost += w.strained;
  if (from.hand !== to.hand) return cost;
  if (high.fret < low.fret) cost += w.crossed;
  if (high.fret === low.fret && high.string > low.string) cost += w.reversed;
  return cost;
}
