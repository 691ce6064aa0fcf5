import {
  CONTOURS,
  isPhraseDrill,
  RHYTHMS,
  type Contour,
  type Deck,
  type DrillOf,
  type Rhythm,
} from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { FASTEST, SLOWEST } from '../../sound/tempo.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import {
  excerptFrom,
  firstOf,
  heardWords,
  phraseItems,
  readHeard,
  type Worded,
} from '../excerpt/items.ts';
import { type Piece } from '../excerpt/piece.ts';

/** A short line to be heard and played back: drawn from an arpeggio of the key, or an arpeggio of a phrase. */
export interface EchoItem extends Item {
  readonly kind: 'echo';
  readonly instrument: Instrument;
  /** Quarter notes a minute. */
  readonly tempo: number;
  /** How it is drawn; null where a phrase has it. */
  readonly drawn: { readonly contour: Contour; readonly rhythm: Rhythm } | null;
  readonly excerpt: Excerpt | null;
}

/** Every degree × chord size × contour of the drill, or every arpeggio of its phrases. */
export function items(deck: Deck, drill: DrillOf<'echo'>): EchoItem[] {
  if (isPhraseDrill(drill)) return phraseItems('echo', deck, drill, worded, read);
  const { key, instrument } = deck;
  const { tempo, rhythm = 'triplets' } = drill;
  return drill.sizes.flatMap((size) =>
    drill.degrees.flatMap((degree) =>
      drill.contours.map((contour) =>
        drawnItem({ kind: 'echo', key, degree, size, instrument }, { contour, rhythm }, tempo),
      ),
    ),
  );
}

/** An ear keeps so many notes to play them back. */
const KEPT = 8;

function worded(piece: Piece): Worded[] {
  return piece.groups.flatMap(({ from, to }, group) => {
    if (to - from < 2 || to - from > KEPT) return [];
    const excerpt = excerptFrom(piece, group, group + 1);
    return [{ ...firstOf(excerpt), words: heardWords(excerpt, piece.tempo) }];
  });
}

function drawnItem(
  head: IdHead<'echo'>,
  drawn: NonNullable<EchoItem['drawn']>,
  tempo: number,
): EchoItem {
  const { contour, rhythm } = drawn;
  const id = writeId(head, [contour, tempo, ...(rhythm === 'triplets' ? [] : [rhythm])]);
  return { id, ...head, strings: '', drawn, tempo, excerpt: null };
}

/** Reads `echo:Bb major:5:triad:guitar:turn:72`, with `:eighths` behind it, or of a phrase `echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3`; null where it is none. */
export function read(head: IdHead<'echo'>, rest: readonly string[]): EchoItem | null {
  if (rest.length === 1) {
    const heard = readHeard(head, rest, firstOf);
    const whole = heard && heard.excerpt.groups.length === 1 && heard.excerpt.missing === null;
    return whole && heard.excerpt.notes.length <= KEPT
      ? { ...heard, instrument: head.instrument, drawn: null }
      : null;
  }
  const [contourText, tempoText, rhythmText = 'triplets'] = rest;
  const contour = CONTOURS.find((one) => one === contourText);
  const rhythm = RHYTHMS.find((one) => one === rhythmText);
  const tempo = Number.parseInt(tempoText ?? '', 10);
  if (!contour || !rhythm || !(tempo >= SLOWEST && tempo <= FASTEST)) return null;
  const item = drawnItem(head, { contour, rhythm }, tempo);
  return item.id === writeId(head, rest) ? item : null;
}
