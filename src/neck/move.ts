import { fretsLeft, openMidi, type Instrument } from './instrument.ts';
import type { Place } from './place.ts';

/** A shape on another string set, and what had to bend on the way. */
export interface Moved<P extends Place> {
  /** In the order of the places that were moved. */
  readonly places: readonly P[];
  /** Those of `places` that do not lie on the fret they came from. */
  readonly bent: readonly P[];
  /** Why they bend, or that nothing does. */
  readonly sentence: string;
}

/**
 * The same shape some frets up (or, below 0, down). Null where it would leave the frets, and for shapes with open
 * strings, which do not move.
 */
export function moveAlong<P extends Place>(
  instrument: Instrument,
  places: readonly P[],
  frets: number,
): P[] | null {
  return onNeck(
    instrument,
    places,
    places.map((place) => ({ ...place, fret: place.fret + frets })),
  );
}

/**
 * The same shape on the next string set over: one string towards the high ones (`strings` 1) or the low ones (−1), or
 * further. Every note moves by the interval that most neighbouring strings are tuned apart, so the shape keeps its
 * intervals; where two strings are tuned otherwise, it bends. Null where it would leave the neck.
 */
export function moveAcross<P extends Place>(
  instrument: Instrument,
  places: readonly P[],
  strings: number,
): Moved<P> | null {
  const open = openMidi(instrument);
  const usual = usualInterval(instrument);
  const moved = places.map((place) => {
    const string = place.string - strings;
    const interval = (open[string - 1] ?? Number.NaN) - open[place.string - 1]!;
    return { ...place, string, fret: place.fret + usual * strings - interval };
  });
  const found = onNeck(instrument, places, moved);
  if (!found) return null;
  const bent = found.filter((place, i) => place.fret !== places[i]!.fret);
  return { places: found, bent, sentence: whyBent(instrument, places, found, strings) };
}

function onNeck<P extends Place>(
  instrument: Instrument,
  from: readonly P[],
  to: readonly P[],
): P[] | null {
  const highest = fretsLeft(instrument);
  const movable = from.every((place) => place.fret > 0);
  // A string that is not there has given its place no fret.
  const fits = to.every((place) => place.fret >= 1 && place.fret <= highest);
  return movable && fits ? [...to] : null;
}

/** Semitones from each string to the next higher-numbered one below it: `[5, 4, 5, 5, 5]` on a guitar, from string 1. */
function neighbours(instrument: Instrument): number[] {
  const open = openMidi(instrument);
  return open.slice(1).map((midi, i) => open[i]! - midi);
}

/** The interval, in semitones, that most neighbouring strings are tuned apart; of equally many the nearest to a fourth. */
export function usualInterval(instrument: Instrument): number {
  const intervals = neighbours(instrument);
  const count = (interval: number) => intervals.filter((other) => other === interval).length;
  const [usual] = intervals.toSorted(
    (a, b) => count(b) - count(a) || Math.abs(a - 5) - Math.abs(b - 5),
  );
  return usual!;
}

const INTERVALS = [
  'in unison',
  'a semitone apart',
  'a whole tone apart',
  'a minor third apart',
  'a major third apart',
  'a fourth apart',
  'a tritone apart',
  'a fifth apart',
  'a minor sixth apart',
  'a major sixth apart',
  'a minor seventh apart',
  'a major seventh apart',
  'an octave apart',
];

/** How a string and the next lower-numbered one are tuned: `strings 3 and 2 are tuned a major third apart`. */
function pairText(upper: number, semitones: number): string {
  const turned = semitones < 0 ? `, string ${upper + 1} the higher` : '';
  return `strings ${upper + 1} and ${upper} are tuned ${intervalText(semitones)}${turned}`;
}

function intervalText(semitones: number): string {
  return INTERVALS[Math.abs(semitones)] ?? `${Math.abs(semitones)} semitones apart`;
}

function whyBent(
  instrument: Instrument,
  from: readonly Place[],
  to: readonly Place[],
  strings: number,
): string {
  const usual = usualInterval(instrument);
  const intervals = neighbours(instrument);
  const odd = intervals.flatMap((interval, i) => (interval === usual ? [] : [i + 1]));
  const crossed = odd.filter((upper) =>
    from.some(({ string }) => {
      const other = string - strings;
      return Math.min(string, other) <= upper && upper < Math.max(string, other);
    }),
  );
  if (crossed.length === 0)
    return 'The shape stays as it is: the strings it crosses are tuned alike.';
  const pairs = crossed.toReversed().map((upper) => pairText(upper, intervals[upper - 1]!));
  const others = odd.length === crossed.length ? 'the others' : 'most others';
  const bends = to.map((place, i) => place.fret - from[i]!.fret);
  const sentence = `${pairs.join(', ')}, ${others} ${intervalText(usual)}: ${bendText(bends)}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** `what crosses them moves up one fret`, from the frets by which each dot moves. */
function bendText(bends: readonly number[]): string {
  const [bend, ...more] = new Set(bends.filter((frets) => frets !== 0));
  if (bend === undefined) return 'the bends cancel out';
  if (more.length > 0) return 'the dots that cross them move';
  const frets = Math.abs(bend) === 1 ? 'one fret' : `${Math.abs(bend)} frets`;
  return `what crosses them moves ${bend > 0 ? 'up' : 'down'} ${frets}`;
}
