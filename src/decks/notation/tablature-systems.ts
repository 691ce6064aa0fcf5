/** Where the tablature is in a text: systems of as many lines as the instrument has strings, all in step. */
import type { Instrument } from '../../neck/instrument.ts';
import { chroma, parseNote, parsePitch } from '../../theory/note.ts';
import type { Remark } from './remark.ts';

/** The line of one string. */
export interface StringLine {
  /** Its number in the text, from 1. */
  readonly number: number;
  /** Its name where it has one, and else empty. */
  readonly label: string;
  /** How many characters stand before `body`, which begins behind the first bar line where there is one. */
  readonly start: number;
  readonly body: string;
}

/** The row of lengths over a system; `at` counts from where the strings' bodies begin. */
interface TimingRow {
  readonly line: number;
  readonly start: number;
  readonly tokens: readonly { readonly at: number; readonly text: string }[];
}

/** One line of music: a line for each string, string 1 first. */
export interface System {
  readonly strings: readonly StringLine[];
  readonly timing: TimingRow | null;
  /** Where the bar lines are, as characters of the bodies; −1 for the one before them. */
  readonly bars: readonly number[];
}

const STRING =
  /^(?<before>(?<label>[A-Ha-h][#b♯♭]?(?:\d(?=\s*[|:]))?)?(?=\s*[-–—|:\d~/\\])\s*[|:]?)(?<body>.*)$/;
const TIMING = /^(?<before>\s*beats\b)(?<row>.*)$/i;

/** The systems of a text. Lines before, between and behind them are no tablature; lines within them must be. */
export function systemsOf(text: string, instrument: Instrument, faults: Remark[]): System[] {
  const count = instrument.tuning.length;
  const systems: System[] = [];
  let strings: StringLine[] = [];
  let row: { readonly number: number; readonly line: string } | null = null;
  const lines = [...text.split(/\r\n|\r|\n/), ''];
  for (const [i, line] of lines.entries()) {
    const number = i + 1;
    const string = stringLine(line, number);
    if (string) strings.push(string);
    else if (line.trim() !== '' && strings.length > 0) {
      const sentence =
        'This line cannot be read as tablature: write dashes and frets, or put it above or below.';
      faults.push({ line: number, column: 1, sentence });
    } else if (strings.length > 0) {
      const sentence = `Only ${strings.length} of ${count} lines: the ${instrument.name} needs one for each string, all of them together.`;
      faults.push({ line: strings[0]!.number, column: 1, sentence });
      strings = [];
    }
    if (TIMING.test(line)) row = { number, line };
    if (strings.length < count) continue;
    checkLabels(strings, instrument, faults);
    const bars = checkStep(strings, faults);
    systems.push({ strings, bars, timing: row && timingRow(row, strings[0]!) });
    strings = [];
    row = null;
  }
  return systems;
}

/** A line of tablature, which is mostly dashes, bar lines and frets; null for any other. */
function stringLine(line: string, number: number): StringLine | null {
  // Apart from the pattern: it would try each of many spaces as the last one.
  const written = line.trimStart();
  const parts = STRING.exec(written)?.groups;
  if (!parts) return null;
  const { before = '', label = '', body = '' } = parts;
  const dashes = body.match(/[-–—|]/g)?.length ?? 0;
  const others = body.match(/[^-–—|\d\s:~hps/\\]/gi)?.length ?? 0;
  if (dashes < 2 || others > dashes) return null;
  const start = line.length - written.length + before.length;
  return { number, label, start, body: body.trimEnd() };
}

function timingRow(
  { number, line }: { number: number; line: string },
  first: StringLine,
): TimingRow {
  const { before = '', row = '' } = TIMING.exec(line)?.groups ?? {};
  const tokens = Array.from(row.matchAll(/\S+/g), ({ 0: text, index }) => ({
    at: before.length + index - first.start,
    text,
  }));
  return { line: number, start: first.start, tokens };
}

/** Strings that have a name must have that of the instrument's: text that is upside down shows here. */
function checkLabels(
  strings: readonly StringLine[],
  instrument: Instrument,
  faults: Remark[],
): void {
  for (const [i, { number, label }] of strings.entries()) {
    if (label === '') continue;
    const written = parseNote(label.replace(/\d$/, '').replace(/^[Hh]/, 'B'));
    const tuned = parsePitch(instrument.tuning.at(-1 - i) ?? '')?.name;
    if (written && tuned && chroma(written) === chroma(tuned)) continue;
    const sentence = `This line is named ${label}, but string ${i + 1} of the ${instrument.name} is tuned to ${tuned}: string 1 goes on top; choose the instrument that fits.`;
    faults.push({ line: number, column: 1, sentence });
  }
}

/** Points at lines whose bar lines or end are not where most have theirs; gives the places of the bar lines. */
function checkStep(strings: readonly StringLine[], faults: Remark[]): number[] {
  const marks = strings.map(({ body }) => [
    ...Array.from(body.matchAll(/\|+/g), ({ index }) => index),
    body.length,
  ]);
  const votes = new Map<string, number>();
  for (const mark of marks) votes.set(String(mark), (votes.get(String(mark)) ?? 0) + 1);
  const most = Math.max(...votes.values());
  const usual = marks.find((mark) => votes.get(String(mark)) === most) ?? [];
  for (const [i, { number, start }] of strings.entries()) {
    const mark = marks[i] ?? [];
    const odd = mark.findIndex((at, k) => at !== usual[k]);
    if (odd < 0 && mark.length === usual.length) continue;
    const sentence = `This line is out of step with the others from here back to its last bar line: give every string as many dashes.`;
    faults.push({ line: number, column: start + (mark[odd] ?? mark.at(-1) ?? 0) + 1, sentence });
  }
  return [-1, ...usual.slice(0, -1)];
}
