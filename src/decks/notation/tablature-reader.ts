/**
 * Reads plain text tablature as `tablature.ts` describes it and as people write it. Nothing is guessed: a line that is
 * out of step with the others, or holds what cannot be read, is pointed at, and then there is no phrase.
 */
import { fretsLeft } from '../../neck/instrument.ts';
import type { Instrument } from '../../neck/instrument.ts';
import { midiAt } from '../../neck/place.ts';
import { spell } from '../../theory/spell.ts';
import type { Key } from '../../theory/key.ts';
import type { Articulation, Phrase, PhraseNote } from '../../theory/phrase.ts';
import { add, beats, compare, times } from '../../theory/rhythm.ts';
import { beatsText, parseBeats } from '../../theory/rhythmText.ts';
import type { Beats } from '../../theory/rhythm.ts';
import { isTime } from '../notes.ts';
import { MOST } from '../deck.ts';
import type { Remark } from './remark.ts';
import { systemsOf } from './tablature-systems.ts';
import type { StringLine, System } from './tablature-systems.ts';

/** What tablature does not say by itself. */
interface TablatureContext {
  readonly instrument: Instrument;
  /** Spells the notes. */
  readonly key: Key;
  /** How long each note is where the text does not tell: a third of a beat is a triplet. */
  readonly length: Beats;
  /** Quarter notes a minute where the text does not tell. */
  readonly tempo: number;
  /** How many beats there are between two bar lines. */
  readonly beatsPerBar: number;
}

/** A phrase, with what was left out or looks odd; or what kept it from being read. */
export type TablatureRead =
  | { readonly phrase: Phrase; readonly remarks: readonly Remark[] }
  | {
      readonly faults: readonly Remark[];
      /** The text with only the highest of notes that stand under one another, where some do. */
      readonly upper?: string;
    };

const MOST_TEXT = 20_000;
const ARTICULATION_SIGNS: Readonly<Record<string, Articulation>> = {
  h: 'hammer-on',
  p: 'pull-off',
  s: 'slide',
  '/': 'slide',
  '\\': 'slide',
};

interface Mark {
  readonly articulation: Articulation;
  readonly column: number;
  /** Whether it stands right before the fret that it leads to. */
  readonly close: boolean;
}

/** A fret as it stands in the text. */
interface Fret {
  readonly string: number;
  readonly fret: number;
  /** Characters from the beginning of the strings' lines: its first digit, and what follows its last. */
  readonly from: number;
  readonly to: number;
  readonly mark: Mark | null;
  readonly where: Pick<Remark, 'line' | 'column'>;
}

interface Timed {
  readonly length: Beats;
  /** What passes until the next note. */
  readonly step: Beats;
}

/** Reads a phrase from text. Inverts `writeTablature` for notes that have places and are spelled as the key does. */
export function readTablature(text: string, context: TablatureContext): TablatureRead {
  const faults: Remark[] = [];
  const remarks: Remark[] = [];
  if (text.length > MOST_TEXT) {
    return {
      faults: [
        remark(1, 1, `This is longer than a phrase can be: paste up to ${MOST_TEXT} characters.`),
      ],
    };
  }
  const systems = systemsOf(text, context.instrument, faults);
  const read = systems.map((system) => readFrets(system, context.instrument, faults, remarks));
  const count = read.reduce((sum, frets) => sum + frets.length, 0);
  if (count === 0 && faults.length === 0) {
    faults.push(
      remark(1, 1, 'There is no tablature here: paste a line of dashes and frets for each string.'),
    );
  }
  if (count > MOST.notes) {
    const { where } = read.flat()[MOST.notes]!;
    faults.push({ ...where, sentence: `A phrase has at most ${MOST.notes} notes: cut it here.` });
  }
  const { start, timing } = timesOf(systems, read, context, faults);
  if (faults.length > 0) {
    const lower = read.flatMap((frets) => lowerOf(frets, context.instrument));
    return {
      faults: faults.toSorted(inOrder),
      ...(lower.length > 0 && { upper: dashed(text, lower) }),
    };
  }

  let at = start;
  const notes = read.flat().map(({ string, fret, mark, where }, i): PhraseNote => {
    const midi = midiAt(context.instrument, { string, fret });
    const { length, step } = timing[i]!;
    const note = { midi, name: spell(context.key, midi), at, length, place: { string, fret } };
    at = add(at, step);
    if (!isTime(at)) faults.push({ ...where, sentence: TOO_FINE });
    return mark ? { ...note, articulation: mark.articulation } : note;
  });
  if (faults.length > 0) return { faults };
  if (systems.every(({ timing: row }) => row === null)) {
    remarks.push(...oddBars(systems, read, context));
  }
  return { phrase: { tempo: tempoOf(text) ?? context.tempo, notes }, remarks };
}

const inOrder = (a: Remark, b: Remark) => a.line - b.line || a.column - b.column;

function remark(line: number, column: number, sentence: string): Remark {
  return { line, column, sentence };
}

function tempoOf(text: string): number | null {
  const tempo = Number(/^[ \t]*tempo[ \t]+(\d{2,3})[ \t]*$/im.exec(text)?.[1]);
  return tempo >= 30 && tempo <= 240 ? tempo : null;
}

/** The frets of one system in the order of their sounding. */
function readFrets(
  { strings }: System,
  instrument: Instrument,
  faults: Remark[],
  remarks: Remark[],
): readonly Fret[] {
  const frets = strings
    .flatMap((line, i) => readLine(line, i + 1, fretsLeft(instrument), faults, remarks))
    .toSorted((a, b) => a.from - b.from);
  return frets.map((fret, i) => {
    const before = frets[i - 1];
    if (before && fret.from < before.to) {
      faults.push({
        ...fret.where,
        sentence: `This note stands under the one on string ${before.string}, and a phrase is a line of single notes: move one of them aside.`,
      });
    }
    if (!fret.mark || fret.mark.close || before?.string === fret.string) return fret;
    remarks.push(lost(fret.mark.articulation, fret.where.line, fret.mark.column));
    return { ...fret, mark: null };
  });
}

/** Of notes that stand under one another all but the highest. */
function lowerOf(frets: readonly Fret[], instrument: Instrument): Fret[] {
  const lower: Fret[] = [];
  let [highest, ...rest] = frets;
  for (const fret of rest) {
    if (!highest || fret.from >= highest.to) highest = fret;
    else if (midiAt(instrument, fret) > midiAt(instrument, highest)) {
      lower.push(highest);
      highest = fret;
    } else lower.push(fret);
  }
  return lower;
}

/** The text with dashes where these frets stood. */
function dashed(text: string, frets: readonly Fret[]): string {
  const lines = text.split(/\r\n|\r|\n/);
  for (const { from, to, where } of frets) {
    const line = lines[where.line - 1]!;
    const [begin, end] = [where.column - 1, where.column - 1 + to - from];
    lines[where.line - 1] = line.slice(0, begin) + '-'.repeat(to - from) + line.slice(end);
  }
  return lines.join('\n');
}

function readLine(
  line: StringLine,
  string: number,
  highest: number,
  faults: Remark[],
  remarks: Remark[],
): Fret[] {
  const frets: Fret[] = [];
  let mark: Mark | null = null;
  for (const { 0: sign, index } of line.body.matchAll(/\d+|[-–—|: ~]+|[\s\S]/g)) {
    const where = { line: line.number, column: line.start + index + 1 };
    const articulation = ARTICULATION_SIGNS[sign.toLowerCase()];
    if (/\d/.test(sign)) {
      if (sign.length > 2 || Number(sign) > highest) {
        const sentence = `There is no fret ${sign} (the last is ${highest}): put a dash between two notes.`;
        faults.push({ ...where, sentence });
      }
      frets.push({ string, fret: Number(sign), from: index, to: index + sign.length, mark, where });
      mark = null;
    } else if (articulation) {
      if (mark) remarks.push(lost(mark.articulation, where.line, mark.column));
      mark = { articulation, column: where.column, close: true };
    } else if (/[-–—|: ~]/.test(sign)) {
      if (mark) mark = { articulation: mark.articulation, column: mark.column, close: false };
      if (sign.includes('~')) remarks.push({ ...where, sentence: 'Vibrato (~) is not kept.' });
    } else {
      const sentence = `“${sign}” cannot be read here: use frets, dashes, bar lines and h p / \\ ~.`;
      faults.push({ ...where, sentence });
    }
  }
  if (mark) remarks.push(lost(mark.articulation, line.number, mark.column));
  return frets;
}

function lost(articulation: Articulation, line: number, column: number): Remark {
  return remark(
    line,
    column,
    `This ${articulation} has no note beside it on its string, so it is left out.`,
  );
}

/** When the phrase begins and how long each note is, from the rows of lengths where there are any. */
function timesOf(
  systems: readonly System[],
  read: readonly (readonly Fret[])[],
  { length }: TablatureContext,
  faults: Remark[],
): { readonly start: Beats; readonly timing: readonly Timed[] } {
  let start = beats(0);
  let last: Timed = { length, step: length };
  const timing: Timed[] = [];
  for (const [i, { timing: row }] of systems.entries()) {
    const told = new Map(row?.tokens.map((token) => [token.at, token]));
    const frets = read[i] ?? [];
    for (const { from } of frets) {
      const token = told.get(from);
      told.delete(from);
      const timed = token ? parseTimed(token.text) : last;
      if (timed) last = timed;
      else if (token && row) faults.push(remark(row.line, row.start + token.at + 1, NO_LENGTH));
      timing.push(last);
    }
    for (const { at, text } of told.values()) {
      const opens = timing.length === frets.length && at < (frets[0]?.from ?? 0);
      const pause = opens && text.startsWith('>') ? parseBeats(text.slice(1)) : null;
      if (pause && pause.n > 0) start = pause;
      else if (row) faults.push(remark(row.line, row.start + at + 1, NO_LENGTH));
    }
  }
  return { start, timing };
}

const NO_LENGTH =
  'Write a length in beats over the first digit of a note, like 1/3, or 1>4/3 where another time passes until the next.';

const TOO_FINE =
  'The lengths up to here come to no time that can be kept: use whole beats, halves, thirds and their parts.';

/** `1/3`, or `1>4/3`: one beat long, the next after four thirds. Null for anything else. */
function parseTimed(text: string): Timed | null {
  const [lengthText = '', stepText = lengthText] = text.split('>');
  const length = parseBeats(lengthText);
  const step = parseBeats(stepText);
  return length && step && isTime(length) && isTime(step) && length.n > 0 && step.n > 0
    ? { length, step }
    : null;
}

/** Bars, but for the first and the last, whose notes do not fill them. */
function oddBars(
  systems: readonly System[],
  read: readonly (readonly Fret[])[],
  { length, beatsPerBar }: TablatureContext,
): Remark[] {
  const bars = systems.flatMap(({ bars: lines, strings }, i) => {
    const where = { line: strings[0]?.number ?? 1, start: strings[0]?.start ?? 0 };
    return lines.slice(1).map((end, k) => {
      const begin = lines[k] ?? 0;
      const notes = read[i]?.filter(({ from }) => from > begin && from < end).length ?? 0;
      return { line: where.line, column: where.start + begin + 2, notes };
    });
  });
  const full = bars.filter(({ notes }) => notes > 0);
  return full.slice(1, -1).flatMap(({ line, column, notes }, i) => {
    const filled = times(length, notes);
    if (compare(filled, beats(beatsPerBar)) === 0) return [];
    return [
      remark(
        line,
        column,
        `Bar ${i + 2} has ${notes} ${notes === 1 ? 'note' : 'notes'} of ${beatsText(length)} beat each: that makes ${beatsText(filled)} beats, not ${beatsPerBar}.`,
      ),
    ];
  });
}
