import { fretsLeft, instrumentId, GUITAR, type Instrument } from '../../neck/instrument.ts';
import { instrumentFromId } from '../../neck/instrumentFault.ts';
import type { Place } from '../../neck/place.ts';
import type { Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { hasSevenNotes } from '../../theory/scale.ts';

/** What can stand on the dots; fingers on one shape only. */
export const SHOWN = ['names', 'degrees', 'intervals', 'nothing', 'fingers'] as const;
export type ShownOnDots = (typeof SHOWN)[number];

/** One shape of the arpeggio, and how it got there. */
export interface OneShape {
  /** From the lowest sounding note to the highest, none of them open. */
  readonly shape: readonly Place[];
  /** The way it was moved across the strings to get here: 1 towards the high ones, −1 the low ones, 0 not at all. */
  readonly across: -1 | 0 | 1;
}

/** The part of the neck that has dots: everything, one position of the hand, one string set, or one shape. */
export type Where =
  | { readonly frets: readonly [number, number] }
  /** From the highest string number down. */
  | { readonly strings: readonly number[] }
  | OneShape
  | null;

/** What is looked at on the neck: all that a link of it carries. */
export interface View {
  readonly key: Key;
  readonly size: Size;
  /** The arpeggio shown, by its degree; null shows the whole scale. */
  readonly degree: number | null;
  /** The arpeggio stepped from, or null. */
  readonly from: number | null;
  readonly shown: ShownOnDots;
  readonly where: Where;
  readonly instrument: Instrument;
}

/** A key's whole scale with its names, on all of a neck. */
export function plainView(key: Key, instrument: Instrument = GUITAR): View {
  return {
    key,
    size: 'triad',
    degree: null,
    from: null,
    shown: 'names',
    where: null,
    instrument: asListed(instrument),
  };
}

/** An instrument as a link can carry it: called by its tuning, with the scale length that goes with that. */
function asListed(instrument: Instrument): Instrument {
  const { frets, leftHanded } = instrument;
  return { ...(instrumentFromId(instrumentId(instrument)) ?? GUITAR), frets, leftHanded };
}

/** Another tonic or scale. An arpeggio stays on its degree where the scale has arpeggios. */
export function viewInKey(view: View, key: Key): View {
  const degree = hasSevenNotes(key.scale) ? view.degree : null;
  return { ...view, key, degree, from: null };
}

/** A step of the stair: to that arpeggio, or from it back to the whole scale. */
export function steppedTo(view: View, degree: number): View {
  return view.degree === degree
    ? { ...view, degree: null, from: null }
    : { ...view, degree, from: view.degree };
}

/** Another instrument. Where the part looked at is not on it, all of it is. */
export function viewOnInstrument(view: View, instrument: Instrument): View {
  const next = { ...view, instrument };
  return isOn(instrument, view.where) ? next : { ...next, where: null };
}

/** Whether an instrument has that part, written as the choices write it. */
export function isOn(instrument: Instrument, where: Where): boolean {
  if (where === null) return true;
  if ('frets' in where) {
    const [low, high] = where.frets;
    return low >= 0 && low <= high && high <= fretsLeft(instrument);
  }
  if ('shape' in where)
    return where.shape.every(
      ({ string, fret }) =>
        string >= 1 &&
        string <= instrument.tuning.length &&
        fret >= 1 &&
        fret <= fretsLeft(instrument),
    );
  const { strings } = where;
  return strings.every(
    (string, i) =>
      string >= 1 && string <= (i === 0 ? instrument.tuning.length : strings[i - 1]! - 1),
  );
}

/** The strings that places are on, from the highest number down. */
export function stringsOf(places: readonly Place[]): number[] {
  return [...new Set(places.map(({ string }) => string))].toSorted((a, b) => b - a);
}

/** The frets under a hand that stays where it is: one for each finger, and one to stretch to. */
const POSITION = 5;

/** Every position of a neck, from its open strings up. */
export function positions(instrument: Instrument): [number, number][] {
  return range(0, fretsLeft(instrument) - POSITION + 1).map((low) => [low, low + POSITION - 1]);
}

/** Two, three or four neighbouring strings, from the highest string numbers down. */
export function stringSets(instrument: Instrument): number[][] {
  const count = instrument.tuning.length;
  return [2, 3, 4].flatMap((size) =>
    range(size, count)
      .toReversed()
      .map((top) => range(top - size + 1, top).toReversed()),
  );
}

export function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
}
