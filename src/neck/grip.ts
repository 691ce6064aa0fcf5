import type { Chord } from '../theory/chord.ts';
import { frettedCost, type Finger } from './effort.ts';
import { fretDistances, type FretDistances } from './fret.ts';
import type { Instrument } from './instrument.ts';
import type { Place } from './place.ts';
import { memberPlaces, type MemberPlace, type Region } from './shapes.ts';

/** A place of a grip and the finger on it, 0 where it sounds open. */
interface Held extends MemberPlace {
  readonly finger: Finger;
}

/** A chord held all at once, a note a string. */
interface Grip {
  /** From the highest string number down. */
  readonly places: readonly Held[];
  /** Whether the index finger lies across several strings. */
  readonly barre: boolean;
  /** What holding it costs a hand. */
  readonly cost: number;
}

/** The notes of a chord, whatever key it stands in. */
export type ChordNotes = Pick<Chord, 'notes' | 'members'>;

/**
 * What real grips span: of 2,068 listed ones none over three fret steps, none over 97.3 mm at a scale length of 648
 * (measured on @tombatossals/chords-db 0.5.1).
 */
const STEPS_HELD = 3;
const MM_HELD = 100;

/**
 * Every grip of a chord that sounds a chord note on each of the strings and mutes the others: at most three fret steps
 * and four fingers, the index as a barre where it helps; open strings where the region has them, beside any
 * fret. A grip may double members and leave some out; complete ones come first, then the easier.
 */
export function grips(instrument: Instrument, chord: ChordNotes, region: Region): Grip[] {
  const neck = fretDistances(instrument);
  const strings = region.strings.toSorted((a, b) => b - a);
  const places = memberPlaces(instrument, chord, region).flat();
  const options = strings.map((string) =>
    places.filter((place) => place.string === string).toSorted((a, b) => a.fret - b.fret),
  );
  const found: Grip[] = [];
  const taken: MemberPlace[] = [];
  const grow = (lowest: number, highest: number) => {
    const next = options[taken.length];
    if (!next) {
      const grip = held(neck, taken);
      if (grip) found.push(grip);
      return;
    }
    for (const place of next) {
      const low = place.fret === 0 ? lowest : Math.min(lowest, place.fret);
      const high = Math.max(highest, place.fret);
      if (high > low && (high - low > STEPS_HELD || neck[high]! - neck[low]! > MM_HELD)) continue;
      taken.push(place);
      grow(low, high);
      taken.pop();
    }
  };
  grow(Infinity, 0);
  const missing = (grip: Grip) =>
    chord.members.filter((member) => !grip.places.some((place) => place.member === member)).length;
  return found.toSorted(
    (a, b) => missing(a) - missing(b) || a.cost - b.cost || (fretText(a) < fretText(b) ? -1 : 1),
  );
}

const fretText = (grip: Grip) => grip.places.map((place) => String(place.fret + 10)).join('');

/** The cheapest fingers for places that are held at once, or null where four do not do. */
function held(neck: FretDistances, places: readonly MemberPlace[]): Grip | null {
  const fretted = places
    .filter((place) => place.fret > 0)
    .toSorted((a, b) => a.fret - b.fret || b.string - a.string);
  let best: readonly Finger[] | null = null;
  let least = Infinity;
  for (const fingers of choices(places, fretted)) {
    const cost = holdingCost(neck, fretted, fingers);
    if (cost < least) [best, least] = [fingers, cost];
  }
  if (!best) return null;
  const fingers = best;
  return {
    places: places.map((place) => ({ ...place, finger: fingers[fretted.indexOf(place)] ?? 0 })),
    barre: fingers.filter((finger) => finger === 1).length > 1,
    cost: Math.round(least * 1e6) / 1e6,
  };
}

/** Every choice of fingers that rise with the frets; one finger may lie across strings at one fret. */
function choices(
  places: readonly MemberPlace[],
  fretted: readonly MemberPlace[],
  taken: readonly Finger[] = [],
): Finger[][] {
  const next = fretted[taken.length];
  if (!next) return [[...taken]];
  const last = taken.at(-1) ?? 0;
  const found: Finger[][] = [];
  const first = fretted[taken.indexOf(last as Finger)];
  if (first && first.fret === next.fret && canLie(places, first, next))
    found.push(...choices(places, fretted, [...taken, last]));
  for (let finger = last + 1; finger <= 4; finger++)
    found.push(...choices(places, fretted, [...taken, finger as Finger]));
  return found;
}

/** Whether a finger can lie across the strings from one place to the other: nothing between sounds nearer the nut. */
function canLie(places: readonly MemberPlace[], from: Place, to: Place): boolean {
  return places.every(
    ({ string, fret }) => string > from.string || string < to.string || fret >= to.fret,
  );
}

/** What lying across strings costs each finger: the index least, the ring finger next. */
const LYING = [1.1, 4, 2.5, 4];

/** The hand is over the index's fret or, where the index does not hold, so that the first finger is at rest. */
function holdingCost(
  neck: FretDistances,
  fretted: readonly MemberPlace[],
  fingers: readonly Finger[],
): number {
  const first = fretted[0];
  if (!first) return 0;
  const hand = Math.max(1, first.fret - fingers[0]! + 1);
  return fretted.reduce((sum, place, i) => {
    const finger = fingers[i]!;
    const lies = i > 0 && fingers[i - 1] === finger;
    const laid = lies && fingers[i - 2] !== finger;
    const cost = frettedCost(neck, place.string, place.fret, finger, hand);
    return sum + cost + (laid ? LYING[finger - 1]! : 0);
  }, 0);
}
