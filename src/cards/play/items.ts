import { isPhraseDrill, WAYS, type Deck, type DrillOf, type Way } from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { ShapeChoice } from '../../neck/shapeChoice.ts';
import type { Instrument } from '../../neck/instrument.ts';
import type { Place } from '../../neck/place.ts';
import { hasShape } from '../../neck/shapes.ts';
import type { Item } from '../../practice/item.ts';
import { FASTEST, SLOWEST } from '../../sound/tempo.ts';
import type { Chord } from '../../theory/chord.ts';
import {
  arpeggioItems,
  arpeggioPlaces,
  readArpeggioItem,
  shapesNamed,
} from '../arpeggio/arpeggio.ts';
import { readExcerpt, writeExcerpt, type Excerpt } from '../excerpt/excerpt.ts';
import {
  excerptFrom,
  eyeExcerpt,
  firstOf,
  fretsOf,
  heardWords,
  isEven,
  onlyPart,
  phraseItems,
  readHeard,
  stringSetOf,
  type Worded,
} from '../excerpt/items.ts';
import { hasArpeggio, type Piece } from '../excerpt/piece.ts';

/** An arpeggio to be played: on a string set, or as a phrase has it. */
export interface PlayItem extends Item {
  readonly kind: 'play';
  readonly instrument: Instrument;
  readonly chord: Chord;
  /** From the highest string number down. */
  readonly stringSet: readonly number[];
  readonly frets: readonly [number, number];
  /** Which of its shapes; any where left out. */
  readonly shapes?: ShapeChoice;
  /** Null where a phrase has a way of its own. */
  readonly way: Way | null;
  readonly excerpt: Excerpt | null;
  /** Quarter notes a minute; null at leisure. */
  readonly tempo: number | null;
}

/** Every arpeggio of the drill in every way, or every arpeggio of its phrases. */
export function items(deck: Deck, drill: DrillOf<'play'>): PlayItem[] {
  const { tempo = null } = drill;
  if (isPhraseDrill(drill)) {
    return phraseItems('play', deck, drill, (piece) => worded(piece, tempo), read);
  }
  return arpeggioItems('play', deck, drill).flatMap((item) =>
    drill.ways.map((way) => {
      const id = [item.id, way, ...(tempo === null ? [] : [tempo])].join(':');
      return { ...item, id, way, tempo, excerpt: null };
    }),
  );
}

function worded(piece: Piece, tempo: number | null): Worded[] {
  return piece.groups.flatMap(({ clear }, group) => {
    if (!clear) return [];
    const excerpt =
      tempo === null ? eyeExcerpt(piece, group) : excerptFrom(piece, group, group + 1);
    const words = tempo === null ? writeExcerpt(excerpt) : heardWords(excerpt, tempo);
    return [{ ...firstOf(excerpt), words }];
  });
}

/** Reads `play:Bb major:2:triad:guitar:5-4:1-5:up:72`, or of a phrase `play:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3`; null where it is none. */
export function read(head: IdHead<'play'>, rest: readonly string[]): PlayItem | null {
  return rest.length === 1 ? readOfPhrase(head, rest) : readOnNeck(head, rest);
}

function readOnNeck(head: IdHead<'play'>, rest: readonly string[]): PlayItem | null {
  const where = rest.slice(0, shapesNamed(rest[2]) ? 3 : 2);
  const [wayText, tempoText, ...more] = rest.slice(where.length);
  const item = readArpeggioItem(head, where);
  const way = WAYS.find((one) => one === wayText);
  const tempo = tempoText === undefined ? null : readTempo(tempoText);
  if (!item || !way || more.length > 0 || Number.isNaN(tempo)) return null;
  const region = { strings: item.stringSet, frets: item.frets };
  if (!hasShape(head.instrument, item.chord, region, item.shapes)) return null;
  const words = [...where, way, ...(tempo === null ? [] : [tempo])];
  return { ...item, id: writeId(head, words), way, tempo, excerpt: null };
}

/** NaN for what is no tempo. */
function readTempo(text: string): number {
  const tempo = /^[1-9]\d{1,2}$/.test(text) ? Number(text) : NaN;
  return tempo >= SLOWEST && tempo <= FASTEST ? tempo : NaN;
}

function readOfPhrase(head: IdHead<'play'>, rest: readonly string[]): PlayItem | null {
  const heard = readHeard(head, rest, firstOf);
  const excerpt = heard?.excerpt ?? readExcerpt(onlyPart(rest), head.key, head.instrument);
  const [group, ...more] = excerpt?.groups ?? [];
  if (!excerpt || !group || more.length > 0 || excerpt.missing !== null) return null;
  const { chord } = group;
  if (chord.degree !== head.degree || chord.size !== head.size) return null;
  if ((!heard && !isEven(excerpt)) || !hasArpeggio(excerpt.notes, group)) return null;
  const [strings, frets] = [stringSetOf(excerpt.notes), fretsOf(excerpt.notes)];
  const stringSet = strings.split('-').map(Number);
  const tempo = heard?.tempo ?? null;
  const id = writeId(head, rest);
  return {
    id,
    ...head,
    strings,
    stringSet,
    frets,
    chord,
    excerpt,
    tempo,
    way: null,
    ofPhrase: true,
  };
}

/** Where the phrase has its notes, or wherever they lie on its strings inside its frets. */
export function places(item: PlayItem, instrument: Instrument): readonly Place[] {
  return item.excerpt?.notes.map(({ place }) => place) ?? arpeggioPlaces(item, instrument);
}
