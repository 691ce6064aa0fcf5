/**
 * Plain text tablature, as people write it in messages: one line of dashes and frets for each string, string 1 on top.
 *
 *     tempo 72
 *     beats 1/3            1>4/3
 *     e |------1--------1--|-6----|
 *     B |---3-----------3h4|------|
 *     …
 *
 * Such text says where, not when. So our own has two lines more, which others may leave out: the tempo, and over the
 * strings the length of each note in beats where it changes; `1>4/3` lasts one beat, and 4/3 pass until the next note;
 * a length before the first note, `>1/2`, passes before it. Bar lines are for the eye.
 */
import type { Instrument } from '../../neck/instrument.ts';
import type { Place } from '../../neck/place.ts';
import { parsePitch } from '../../theory/note.ts';
import type { Articulation, Phrase, PhraseNote } from '../../theory/phrase.ts';
import { compare, subtract, toNumber } from '../../theory/rhythm.ts';
import { beatsText } from '../../theory/rhythmText.ts';
import type { Beats } from '../../theory/rhythm.ts';

/** The marks of articulations, each written right before the fret that it leads to. */
const ARTICULATION_MARKS: Readonly<Record<Articulation, string>> = {
  slide: '/',
  'hammer-on': 'h',
  'pull-off': 'p',
};

/** How wide a line of tablature may become before it goes on below. */
const WIDEST = 76;

interface Column {
  /** The bar that the column is in, counted from 0. */
  readonly bar: number;
  readonly place: Place | null;
  /** The fret with its articulation's mark; empty where only time passes. */
  readonly fret: string;
  readonly beats: string;
  /** How many characters of `fret` are its mark. */
  readonly indent: number;
}

/**
 * A phrase as plain text; `readTablature` reads the same phrase from it.
 *
 * @param beatsPerBar how many beats from bar line to bar line
 * @throws RangeError with a sentence where a note has no place
 */
export function writeTablature(phrase: Phrase, instrument: Instrument, beatsPerBar = 4): string {
  const systems = inSystems(columnsOf(phrase.notes, beatsPerBar));
  const labels = labelsOf(instrument);
  const wide = Math.max('beats'.length, ...labels.map((label) => label.length));
  const text = systems.map((columns) => {
    const top = `${'beats'.padEnd(wide)}  ${rowOf(columns, ' ', (column) => ' '.repeat(column.indent) + column.beats)}`;
    const strings = labels.map((label, i) => {
      const row = rowOf(columns, '-', ({ place, fret }) => (place?.string === i + 1 ? fret : ''));
      return `${label.padEnd(wide)} |${row}|`;
    });
    return [top.trimEnd(), ...strings].join('\n');
  });
  return `tempo ${phrase.tempo}\n\n${text.join('\n\n')}\n`;
}

/** What stands before each string's line, string 1 first: `e B G D A E`, the highest of two alike in small letters. */
export function labelsOf(instrument: Instrument): string[] {
  const names = instrument.tuning.map((pitch) => parsePitch(pitch)?.name ?? '').toReversed();
  return names.map((name, i) =>
    names.indexOf(name) === i && names.lastIndexOf(name) > i ? name.toLowerCase() : name,
  );
}

function columnsOf(notes: readonly PhraseNote[], beatsPerBar: number): Column[] {
  const columns: Column[] = [];
  const first = notes[0];
  if (first && first.at.n > 0) {
    const beats = `>${beatsText(first.at)}`;
    columns.push({ bar: 0, place: null, fret: '', indent: 0, beats });
  }
  let shown = '';
  for (const [i, note] of notes.entries()) {
    if (!note.place) {
      throw new RangeError(`Note ${i + 1} has no place on the neck: find places first.`);
    }
    const mark = note.articulation ? ARTICULATION_MARKS[note.articulation] : '';
    const next = notes[i + 1];
    const length = lengthText(note.length, next ? subtract(next.at, note.at) : note.length);
    columns.push({
      bar: Math.floor(toNumber(note.at) / beatsPerBar),
      place: note.place,
      fret: `${mark}${note.place.fret}`,
      indent: mark.length,
      beats: length === shown ? '' : length,
    });
    shown = length;
  }
  return columns;
}

function lengthText(length: Beats, step: Beats): string {
  const text = beatsText(length);
  return compare(length, step) === 0 ? text : `${text}>${beatsText(step)}`;
}

/** Columns in lines that fit, broken where a bar begins if they can be. */
function inSystems(columns: readonly Column[]): Column[][] {
  const systems: Column[][] = [[]];
  for (const [i, column] of columns.entries()) {
    const last = systems.at(-1)!;
    const begins = column.bar !== columns[i - 1]?.bar;
    const together = begins ? columns.filter(({ bar }) => bar === column.bar) : [column];
    if (last.length > 0 && widthOf(last) + widthOf(together) > WIDEST) systems.push([column]);
    else last.push(column);
  }
  return systems;
}

const widthOf = (columns: readonly Column[]) =>
  columns.reduce((sum, column) => sum + cellWidth(column), 0);

function cellWidth({ fret, indent, beats }: Column): number {
  return Math.max(fret.length, beats === '' ? 0 : indent + beats.length) + 1;
}

/** One line of a system: its cells, a filling between them, a bar line where a bar begins. */
function rowOf(columns: readonly Column[], filling: string, cell: (column: Column) => string) {
  const line = filling === '-' ? '|' : ' ';
  return columns
    .map((column, i) => {
      const before = columns[i - 1];
      const bar = before && before.bar !== column.bar ? line + filling : i === 0 ? filling : '';
      return bar + cell(column).padEnd(cellWidth(column), filling);
    })
    .join('');
}
