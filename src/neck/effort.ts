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
 * Sayegh, *Computer Music Journal* 13(3), 1989; the weights were fitted to printed fingerings, and to arpeggios in which
 * no player takes an open string in the middle of a position; other parts of both are held against them in
 * tests/outside. Lengths are mm. Lists by finger begin with the index.
 */
export const WEIGHTS = {
  open: 0.407,
  /** An open string beside a hand up the neck: by the way from the nut in 100 mm, and by its square. */
  openUp: 1.867,
  openAway: 1.954,
  /** × where no finger is over a fret that sounds the same: then the open string spares the hand a way. */
  openSparing: 0.05,
  /** Each fret beyond the third of what is held just before or after an open string. */
  openBeside: 0.114,
  finger: [0.014, 0.147, 0.05, 0.268],
  up: 0.119,
  beyondFirst: 0.05,
  beyondTwelfth: 0.205,
  string: [0.037, 0.011, 0.002, 0.041],
  rest: [0, 27, 56.808, 72],
  stretched: [0, 0.456, 0.66, 0.113],
  bunched: [0, 0.185, 0.118, 0.029],
  reachBack: 0.552,
  barreHeld: 0.084,
  barreLaid: 0.341,
  barreShifted: 0.302,
  /** To shift at all; a fret of 36 mm; what lies beyond `FAR`, in 100 mm, its square where the hand is eased or led. */
  shiftOpen: [0.385, 0.093, 4.28],
  shiftGuided: [1.034, 0.096, 2],
  shift: [1.149, 0.166, 3],
  stringChange: 0.117,
  stringCrossed: 0.027,
  leapOnString: 0.9,
  cutRinging: 0.108,
  slide: 6.931,
  indexRolled: 2.113,
  fingerRolled: 5.413,
  fingerJumped: 21.375,
  /** By the lower finger × 5 + the higher. */
  // prettier-ignore
  pair: [
    0, 0, 0, 0, 0,
    0, 0, 0.009, 0.069, 0.032,
    0, 0, 0, 0.04, 0.117,
    0, 0, 0, 0, 0.154,
  ],
  strained: 1.766,
  crossed: 0.942,
  reversed: 0.361,
  repeatedElsewhere: 0.021,
  repeatedFinger: 0.095,
} as const;
const w = WEIGHTS;
const { barreLaid, barreShifted, leapOnString, cutRinging, slide, indexRolled } = w;
const { fingerRolled, fingerJumped, strained, crossed, reversed } = w;
const { repeatedElsewhere, repeatedFinger, beyondFirst } = w;

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
          cost: cost + WEIGHTS.barreHeld,
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
  return w.open + (w.openUp * up + w.openAway * up ** 2) * (isHeld ? 1 : w.openSparing);
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
  let cost = w.finger[i]! + (w.up * neck[hand - 1]!) / 100 + (string - 1) * w.string[i]!;
  cost += hand > 1 ? beyondFirst : 0;
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
  const change = w.stringChange + w.stringCrossed * (strings - 1);
  const beside = w.openBeside * Math.max(0, from.fret - 3, to.fret - 3);
  const fingers = (same ? oneFinger(from, to) : twoFingers(from, to, haste)) * haste;
  return (
    (isHand ? 0 : shiftCost(shifts, from, to) * haste) +
    (to.barre && !from.barre ? barreLaid : 0) * haste +
    (crosses ? change : leaps ? leapOnString : 0) +
    (!crosses && rings && !repeated ? cutRinging : 0) +
    (crosses && repeated ? repeatedElsewhere : 0) +
    (repeated && !same ? repeatedFinger : 0) +
    (isOpen ? beside : fingers)
  );
}

function shiftCost(shifts: Shifts, from: Hold, to: Hold): number {
  return (
    leastShift(shifts, from, to) +
    (to.barre && from.barre ? barreLaid / 2 : 0) +
    (to.barre || from.barre ? barreShifted : 0)
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

const KINDS = [WEIGHTS.shiftOpen, WEIGHTS.shiftGuided, WEIGHTS.shift] as const;

function travel(way: number, kind: (typeof KINDS)[number]): number {
  const far = kind === WEIGHTS.shiftGuided ? FAR_GUIDED : FAR;
  const beyond = Math.max(0, (way - far) / 100);
  const away = kind === WEIGHTS.shift ? beyond : beyond * beyond;
  return kind[0] + (kind[1] * way) / 36 + kind[2] * away;
}

function oneFinger(from: Hold, to: Hold): number {
  const isString = from.string === to.string;
  const isFret = from.fret === to.fret;
  const isHand = from.hand === to.hand;
  const isIndex = from.finger === 1;
  if (isString) return isFret || !isHand ? 0 : slide;
  if (!isFret) return fingerJumped;
  if (!isIndex) return fingerRolled;
  return from.barre && to.barre ? 0 : indexRolled;
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
    w.pair[low.finger * 5 + high.finger]! / haste +
    (isWide && from.string === to.string ? strained : 0) +
    (isHand && frets < 0 ? crossed : 0) +
    (isHand && isAbove && frets === 0 ? reversed : 0)
  );
}
