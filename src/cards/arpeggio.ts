import type { Deck, Drill } from '../decks/deck.ts';
import { fretsLeft, instrumentFromId, instrumentId, type Instrument } from '../neck/instrument.ts';
import { hasShape, regions } from '../neck/shapes.ts';
import type { Item } from '../practice/item.ts';
import { chordOn, SIZES, type Chord, type Size } from '../theory/chord.ts';
import { keyName, parseKey } from '../theory/key.ts';

/** A chord of a key on a string set inside frets: what `spot` and `place` ask about. */
export interface ArpeggioItem extends Item {
  readonly kind: 'spot' | 'place';
  readonly chord: Chord;
  readonly instrument: Instrument;
  /** From the highest string number down. */
  readonly stringSet: readonly number[];
  readonly frets: readonly [number, number];
}

/** Every degree × chord size × string set × region of the drill that holds a shape a hand can play. */
export function arpeggioItems(kind: 'spot' | 'place', deck: Deck, drill: Drill): ArpeggioItem[] {
  if (drill.kind !== kind) return [];
  const items: ArpeggioItem[] = [];
  for (const size of drill.sizes) {
    for (const degree of drill.degrees) {
      const chord = chordOn(deck.key, degree, size);
      for (const strings of drill.strings) {
        for (const frets of regions(drill.frets, regionWidth(strings))) {
          if (!hasShape(deck.instrument, chord, { strings, frets })) continue;
          items.push(arpeggioItem(kind, chord, deck.instrument, strings, frets));
        }
      }
    }
  }
  return items;
}

/** Five frets lie under a hand; two strings hold every chord of a key only on seven. */
export function regionWidth(strings: readonly number[]): number {
  return strings.length <= 2 ? 7 : 5;
}

function arpeggioItem(
  kind: 'spot' | 'place',
  chord: Chord,
  instrument: Instrument,
  stringSet: readonly number[],
  frets: readonly [number, number],
): ArpeggioItem {
  const strings = stringSet.join('-');
  const id = [
    kind,
    keyName(chord.key),
    chord.degree,
    chord.size,
    instrumentId(instrument),
    strings,
    frets.join('-'),
  ];
  return {
    id: id.join(':'),
    kind,
    degree: chord.degree,
    strings,
    chord,
    instrument,
    stringSet,
    frets,
  };
}

/** Reads an id such as `spot:Bb major:2:triad:guitar:5-4:1-5`; null where it is none. */
export function readArpeggioItem(kind: 'spot' | 'place', id: string): ArpeggioItem | null {
  const parts = id.split(':');
  const [name, keyText, degreeText, size, instrumentText, stringText, fretText] = parts;
  if (parts.length !== 7 || name !== kind) return null;
  const key = parseKey(keyText!);
  const instrument = instrumentFromId(instrumentText!);
  const degree = Number(degreeText);
  const strings = stringText!.split('-').map(Number);
  const frets = fretText!.split('-').map(Number);
  if (!key || !instrument || !SIZES.includes(size as Size)) return null;
  if (!(degree >= 1 && degree <= 7) || !Number.isInteger(degree)) return null;
  if (!strings.every((string) => string >= 1 && string <= instrument.tuning.length)) return null;
  if (frets.length !== 2 || !(frets[0]! <= frets[1]!)) return null;
  const item = arpeggioItem(kind, chordOn(key, degree, size as Size), instrument, strings, [
    frets[0]!,
    frets[1]!,
  ]);
  return item.id === id ? item : null;
}

/** As many frets as a small phone shows at 44 px each. */
export const FRETS_SHOWN = 7;

/** The frets to draw around a region: one more on either side where there is room, to see where one is. */
export function framed(
  [low, high]: readonly [number, number],
  instrument: Instrument,
): [number, number] {
  const to = high - low + 1 < FRETS_SHOWN ? Math.min(fretsLeft(instrument), high + 1) : high;
  const from = low > 1 && to - low + 1 < FRETS_SHOWN ? low - 1 : low;
  return [from, to];
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** `second` for 2. */
export function ordinal(degree: number): string {
  return ORDINALS[degree - 1] ?? String(degree);
}

/** `C`, `C and E♭`, `C, E♭ and G`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
