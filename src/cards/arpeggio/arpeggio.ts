import { SHAPE_CHOICES, type ShapeChoice } from '../../neck/shapeChoice.ts';
import type { Deck, NeckDrill } from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { KindName } from '../../decks/kinds.ts';
import { fretsLeft, type Instrument } from '../../neck/instrument.ts';
import type { Place } from '../../neck/place.ts';
import { hasShape, memberPlaces, regions } from '../../neck/shapes.ts';
import type { Item } from '../../practice/item.ts';
import { chordOn, type Chord } from '../../theory/chord.ts';

/** A chord of a key on a string set inside frets: what `spot` and `place` ask about. */
export interface ArpeggioItem<K extends KindName = KindName> extends Item {
  readonly kind: K;
  readonly chord: Chord;
  readonly instrument: Instrument;
  /** From the highest string number down. */
  readonly stringSet: readonly number[];
  readonly frets: readonly [number, number];
  /** Which of its shapes; any where left out. */
  readonly shapes?: ShapeChoice;
}

/** Every degree × chord size × string set × region of the drill that holds a shape a hand can play. */
export function arpeggioItems<K extends KindName>(
  kind: K,
  { key, instrument }: Pick<Deck, 'key' | 'instrument'>,
  drill: Omit<NeckDrill, 'kind'>,
): ArpeggioItem<K>[] {
  const items: ArpeggioItem<K>[] = [];
  for (const size of drill.sizes) {
    for (const degree of drill.degrees) {
      const chord = chordOn(key, degree, size);
      for (const strings of drill.strings) {
        for (const frets of regions(drill.frets, regionWidth(strings))) {
          const { shapes } = drill;
          if (!hasShape(instrument, chord, { strings, frets }, shapes)) continue;
          const head = { kind, key, degree, size, instrument };
          items.push(arpeggioItem(head, chord, strings, frets, shapes));
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

function arpeggioItem<K extends KindName>(
  head: IdHead<K>,
  chord: Chord,
  stringSet: readonly number[],
  frets: readonly [number, number],
  shapes?: ShapeChoice,
): ArpeggioItem<K> {
  const strings = stringSet.join('-');
  const id = writeId(head, [strings, frets.join('-'), ...(shapes ? [SHAPE_WORDS[shapes]] : [])]);
  return { id, ...head, strings, chord, stringSet, frets, ...(shapes && { shapes }) };
}

/** What an id says behind the frets of an item of some shapes only. */
const SHAPE_WORDS: Readonly<Record<ShapeChoice, string>> = {
  'root position': 'root',
  inversions: 'inversions',
};

/** The shapes that a word of an id names; undefined where it names none. */
export function shapesNamed(word: string | undefined): ShapeChoice | undefined {
  return SHAPE_CHOICES.find((choice) => SHAPE_WORDS[choice] === word);
}

const SET = /^[1-9](?:-[1-9])*$/;
const FRETS = /^(0|[1-9]\d?)-(0|[1-9]\d?)$/;

/** Reads what `spot:Bb major:2:triad:guitar:5-4:1-5` has behind its head, or with `:root` or `:inversions` behind it; null where that says no strings and frets. */
export function readArpeggioItem<K extends KindName>(
  head: IdHead<K>,
  [strings = '', fretText = '', shapeWord, ...more]: readonly string[],
): ArpeggioItem<K> | null {
  const frets = FRETS.exec(fretText);
  const shapes = shapesNamed(shapeWord);
  if (shapeWord !== undefined && !shapes) return null;
  if (!SET.test(strings) || !frets || more.length > 0) return null;
  const [stringSet, low, high] = [
    strings.split('-').map(Number),
    Number(frets[1]),
    Number(frets[2]),
  ];
  const there = stringSet.every((string) => string <= head.instrument.tuning.length);
  if (!there || low > high) return null;
  const chord = chordOn(head.key, head.degree, head.size);
  return arpeggioItem(head, chord, stringSet, [low, high], shapes);
}

/** Wherever one of its notes lies on its strings inside its frets. */
export function arpeggioPlaces(
  { chord, stringSet, frets }: Pick<ArpeggioItem, 'chord' | 'stringSet' | 'frets'>,
  instrument: Instrument,
): Place[] {
  return memberPlaces(instrument, chord, { strings: stringSet, frets }).flat();
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
