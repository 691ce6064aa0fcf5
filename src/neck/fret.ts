import type { Instrument } from './instrument.ts';

/** 2^(−1/12), written out so that every engine has the same digits. */
const SEMITONE = 0.943874312681693_5;

const ratios: number[] = [1];
while (ratios.length < 48) ratios.push(ratios.at(-1)! * SEMITONE);

/**
 * Distance from the nut to a fret, in the unit of `scaleLength` (mm): L·(1 − 2^(−n/12)) (M. Koch, *Building Electric
 * Guitars*). Frets 0 to 47.
 */
export function fretDistance(scaleLength: number, fret: number): number {
  return scaleLength * (1 - ratios[fret]!);
}

/** Distances from the nut, or from the capo where one lies, to each fret counted from there: mm, by fret. */
export type FretDistances = readonly number[];

const known = new WeakMap<Instrument, FretDistances>();

/** Where the frets of an instrument lie, seen from its capo. */
export function fretDistances(instrument: Instrument): FretDistances {
  let distances = known.get(instrument);
  if (!distances) {
    const { scaleLength, capo, frets } = instrument;
    const nut = fretDistance(scaleLength, capo);
    // A finger may be asked about a few frets beyond the last.
    const length = frets - capo + 6;
    distances = Array.from({ length }, (_, fret) => fretDistance(scaleLength, capo + fret) - nut);
    known.set(instrument, distances);
  }
  return distances;
}
