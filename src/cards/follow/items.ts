import type { Deck, DrillOf } from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import { readChord } from '../../decks/rulings.ts';
import { fretsLeft, type Instrument } from '../../neck/instrument.ts';
import { hasShape } from '../../neck/shapes.ts';
import type { Chord } from '../../theory/chord.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { regionWidth } from '../arpeggio/arpeggio.ts';
import { readExcerpt, writeExcerpt, type PlacedNote } from '../excerpt/excerpt.ts';
import {
  eyeExcerpt,
  fretsOf,
  isEven,
  onlyPart,
  phraseItems,
  type ExcerptItem,
  type Worded,
} from '../excerpt/items.ts';
import { type Piece } from '../excerpt/piece.ts';

export { arpeggioPlaces as places } from '../arpeggio/arpeggio.ts';

/** One arpeggio of a phrase as the phrase has it, and the next one to be placed near it. */
export interface FollowItem extends ExcerptItem<'follow'> {
  readonly chord: Chord;
  /** From the highest string number down. */
  readonly stringSet: readonly number[];
  readonly frets: readonly [number, number];
}

/** Every step from one arpeggio of the drill's phrases to another one. */
export function items(deck: Deck, drill: DrillOf<'follow'>): FollowItem[] {
  return phraseItems('follow', deck, drill, worded, read);
}

function worded(piece: Piece): Worded[] {
  return piece.groups.slice(1).flatMap((next, group) => {
    const { chord } = next;
    const before = piece.groups[group]!;
    if (!before.clear || !next.clear || chord.symbol === before.chord.symbol) return [];
    const region = regionNear(piece.instrument, chord, piece.notes.slice(next.from, next.to));
    if (!region) return [];
    const words = [
      writeExcerpt(eyeExcerpt(piece, group)),
      numeralLabel(chord),
      'on',
      region.strings.join('-'),
      region.frets.join('-'),
    ];
    return [{ degree: chord.degree, size: chord.size, words: words.join(' ') }];
  });
}

/** The strings and frets around where the phrase has the arpeggio that hold the whole of it; null where none do. */
function regionNear(instrument: Instrument, chord: Chord, notes: readonly PlacedNote[]) {
  const own = notes.map(({ place }) => place);
  const [lowest, highest] = fretsOf(notes);
  let top = Math.min(...own.map(({ string }) => string));
  let bottom = Math.max(...own.map(({ string }) => string));
  for (;;) {
    const strings = Array.from({ length: bottom - top + 1 }, (_, i) => bottom - i);
    const width = regionWidth(strings);
    const more = Math.max(0, width - (highest - lowest + 1));
    const low = Math.max(lowest === 0 ? 0 : 1, lowest - Math.floor(more / 2));
    const frets = [
      low,
      Math.min(fretsLeft(instrument), Math.max(highest, low + width - 1)),
    ] as const;
    if (hasShape(instrument, chord, { strings, frets })) return { strings, frets };
    if (bottom < instrument.tuning.length) bottom++;
    else if (top > 1) top--;
    else return null;
  }
}

const WORDS = /^(.+) (\S+) on ((?:\d-)*\d) (\d+)-(\d+)$/;

/** Reads `follow:Bb major:5:triad:guitar:ii7 5/3 4/5 4/1 3/3 V on 4-3-2 3-7`; null where it is none. */
export function read(head: IdHead<'follow'>, rest: readonly string[]): FollowItem | null {
  const { key, instrument } = head;
  const [, words = '', numeral = '', strings = '', low, high] = WORDS.exec(onlyPart(rest)) ?? [];
  const excerpt = readExcerpt(words, key, instrument);
  const chord = readChord(numeral, key);
  if (!excerpt || excerpt.groups.length > 1 || excerpt.missing !== null || !isEven(excerpt))
    return null;
  if (!chord || numeralLabel(chord) !== numeral) return null;
  if (chord.degree !== head.degree || chord.size !== head.size) return null;
  const region = readRegion(instrument, strings, [low, high]);
  if (!region || !hasShape(instrument, chord, { strings: region.stringSet, frets: region.frets }))
    return null;
  return { id: writeId(head, rest), ...head, strings, excerpt, chord, ...region };
}

/** Falling strings and rising frets that the instrument has; null for any other. */
function readRegion(
  instrument: Instrument,
  strings: string,
  fretTexts: readonly [string | undefined, string | undefined],
): Pick<FollowItem, 'stringSet' | 'frets'> | null {
  const stringSet = strings.split('-').map(Number);
  const frets = [Number(fretTexts[0]), Number(fretTexts[1])] as const;
  const falling = stringSet.every((string, i) => i === 0 || string < stringSet[i - 1]!);
  if (!falling || stringSet[0]! > instrument.tuning.length || stringSet.at(-1)! < 1) return null;
  if (fretTexts.join('-') !== frets.join('-')) return null;
  return frets[0] <= frets[1] && frets[1] <= fretsLeft(instrument) ? { stringSet, frets } : null;
}
