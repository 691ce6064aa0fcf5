import type { FretDistances } from './fret.ts';
import type { Place } from './place.ts';
import * as W from './weights.ts';

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

/** Lowest and highest fret under each finger, counted from the hand's. */
const REACH = [
  [-1, 0],
  [0, 2],
  [1, 3],
  [1, 4],
] as const;

/** What is asked of the ways to hold a note: where the hand stays, and whether an open string is a gain. */
interface Ways {
  readonly position?: number | undefined;
  readonly open?: boolean | 'rather' | undefined;
  /** The frets at which the same pitch lies on other strings. */
  readonly elsewhere?: readonly number[];
}

/** Every way to hold a note at a place, with the hand at `position` only where that is given. */
export function holdsAt(
  neck: FretDistances,
  { string, fret }: Place,
  highest: number,
  { position, open, elsewhere = [] }: Ways = {},
): Hold[] {
  const holds: Hold[] = [];
  if (fret === 0) {
    for (let hand = position ?? 1; hand <= (position ?? highest); hand++)
      holds.push({
        string,
        fret,
        finger: 0,
        hand,
        barre: false,
        cost: open === 'rather' ? RATHER : openCost(neck, hand, elsewhere),
      });
    return holds;
  }
  for (let finger = 1; finger <= 4; finger++) {
    const [least, most] = REACH[finger - 1]!;
    for (let hand = Math.max(1, fret - most); hand <= fret - least; hand++) {
      if (position !== undefined && hand !== position) continue;
      const cost = frettedCost(neck, string, fret, finger, hand);
      holds.push({ string, fret, finger: finger as Finger, hand, barre: false, cost });
      if (fret >= hand)
        holds.push({
          string,
          fret,
          finger: finger as Finger,
          hand,
          barre: true,
          cost: cost + W.barreHeld,
        });
    }
  }
  return holds;
}

/** What an open string gains where it is rather used than not. */
const RATHER = -1;

function openCost(neck: FretDistances, hand: number, elsewhere: readonly number[]): number {
  const up = neck[hand - 1]! / 100;
  const isHeld = elsewhere.some((fret) => fret >= hand && fret <= hand + REACH[3][1]);
  return W.open + (W.openUp * up + W.openAway * up ** 2) * (isHeld ? 1 : W.openSparing);
}

/** What a finger at a fret costs by itself with the hand at `hand`. */
export function frettedCost(
  neck: FretDistances,
  string: number,
  fret: number,
  finger: number,
  hand: number,
): number {
  const i = finger - 1;
  let cost = W.finger[i]! + (W.up * neck[hand - 1]!) / 100 + (string - 1) * W.string[i]!;
  cost += hand > 1 ? W.beyondFirst : 0;
  if (fret > 12) cost += (W.beyondTwelfth * (neck[fret]! - neck[12]!)) / 36;
  const reach = neck[fret]! - neck[hand]!;
  if (finger === 1) return cost + (W.reachBack * (reach / 10) ** 2) / 8;
  const from = (reach - W.rest[i]!) / 10;
  return cost + ((from > 0 ? W.stretched[i]! : W.bunched[i]!) * from ** 2) / 2;
}
