/**
 * Marks of difficulty as they are written. An item's id begins `kind:key:degree:size:instrument:…`; a deck has one key
 * and one instrument, so a document leaves both out, `spot 7 triad 3-2 1-7`, and a link writes the marks of the seven
 * degrees, which differ in nothing else, in one row: `=s0.3-2.1-7.4000005`. Items stand on seven degrees: in a deck on
 * a scale of fewer notes they name the scale that it is part of.
 */
import { instrumentId } from '../neck/instrument.ts';
import { SIZES } from '../theory/chord.ts';
import { keyName } from '../theory/key.ts';
import { parentKey } from '../theory/scale.ts';
import type { Deck, Mark, Marks } from './deck.ts';
import { drillFormOf } from './drills/index.ts';
import { partsOf } from './id.ts';
import { isKind, KIND_NAMES, kindOfLetter, letterOf } from './kinds.ts';

/** Marks as a document has them: by the item's name without key and instrument. */
type WrittenMarks = Readonly<Record<string, Mark>>;

/** What such a name looks like. */
export const MARKED = new RegExp(
  `^(?:${KIND_NAMES.join('|')}) [1-7] (?:${SIZES.join('|')})(?: [\\w/=~?°ø+♭♯-]{1,20}){1,40}$`,
);

type Of = Pick<Deck, 'key' | 'instrument'>;

/** In the order of their names, so that a deck is written in one way only. @throws RangeError for an item of another key or instrument */
export function writeMarks(marks: Marks, of: Of): WrittenMarks {
  const [keyText, instrumentText] = idTexts(of);
  const written = Object.entries(marks).map(([id, mark]): [string, Mark] => {
    const [kind, ofKey, degree, size, ofInstrument, ...rest] = partsOf(id);
    const name = [kind, degree, size, ...rest].join(' ');
    if (ofKey !== keyText || ofInstrument !== instrumentText || !MARKED.test(name)) {
      throw new RangeError(`The mark on ${id} is on no item of this lesson.`);
    }
    return [name, mark];
  });
  return Object.fromEntries(written.toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

/** Inverts `writeMarks`. */
export function readMarks(written: WrittenMarks, of: Of): Marks {
  const [keyText, instrumentText] = idTexts(of);
  return Object.fromEntries(
    Object.entries(written).map(([name, mark]) => {
      const [kind = '', degree, size, ...rest] = name.split(' ');
      const where = rest.join(isKind(kind) ? drillFormOf(kind).between(rest) : ':');
      return [[kind, keyText, degree, size, instrumentText, where].join(':'), mark];
    }),
  );
}

/** What ids of a deck's items say of its key and its instrument. */
function idTexts({ key, instrument }: Of): [key: string, instrument: string] {
  return [keyName(parentKey(key)), instrumentId(instrument)];
}

/** The rows of a link. */
export function foldMarks(written: WrittenMarks): string[] {
  const rows = new Map<string, number[]>();
  for (const [name, mark] of Object.entries(written)) {
    const [kind = '', degree, size, ...rest] = name.split(' ');
    const row = [
      (isKind(kind) ? letterOf(kind) : '') + SIZES.findIndex((one) => one === size),
      ...rest,
    ].join('.');
    const marks = rows.get(row) ?? [0, 0, 0, 0, 0, 0, 0];
    marks[Number(degree) - 1] = mark;
    rows.set(row, marks);
  }
  return [...rows].map(([row, marks]) => `=${row}.${marks.join('')}`);
}

/** Inverts `foldMarks`; of rows that it would not write come names that no document has. */
export function unfoldMarks(rows: readonly string[]): Record<string, number> {
  const written: Record<string, number> = {};
  for (const row of rows) {
    const [head = '', ...parts] = row.slice(1).split('.');
    const marks = parts.pop() ?? '';
    const kind = kindOfLetter(head[0]);
    const size = SIZES[Number(head.slice(1))];
    [...marks].forEach((mark, i) => {
      if (mark !== '0') written[[kind, i + 1, size, ...parts].join(' ')] = Number(mark);
    });
  }
  return written;
}
