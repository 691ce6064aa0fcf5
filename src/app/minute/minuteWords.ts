/** What is said of a free minute. */
import type { MinuteTold } from '../../making/minute.ts';
import { listed } from '../../parts/english.ts';
import { noteLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { counted, percent } from '../figures.ts';
import { spreadWords, timesWords } from '../measured.ts';

/** A figure: what it is called, what it came to, and what that says more closely. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly detail: string;
}

const cm = (mm: number) => `${Math.round(mm / 10)} cm`;

/** All that a minute came to, what matters most first. */
export function factsOf(told: MinuteTold, naming: Naming): Fact[] {
  return [
    leaps(told),
    run(told, naming),
    arpeggios(told),
    range(told, naming),
    time(told),
    pauses(told),
  ];
}

function leaps({ line }: MinuteTold): Fact {
  const { leaping, leaps: wide, steps, repeats } = line;
  const moves = [counted(wide, 'leap'), counted(steps, 'step')];
  if (repeats > 0) moves.push(counted(repeats, 'repeated note'));
  const value = leaping === null ? 'no move' : percent(leaping);
  return { name: 'Leaps', value, detail: listed(moves) };
}

function run(told: MinuteTold, naming: Naming): Fact {
  const { line } = told;
  const name = 'Longest run';
  if (!line.run) return { name, value: 'none', detail: 'no move by step' };
  const { from, steps, direction } = line.run;
  const [first, last] = [nameOf(told, from, naming), nameOf(told, from + steps, naming)];
  const value = counted(steps, 'step');
  return { name, value, detail: `${direction} from ${first} to ${last}` };
}

function arpeggios({ outlined }: MinuteTold): Fact {
  const value = outlined.length === 0 ? 'none' : `${outlined.length} of 7`;
  const detail = outlined.map(
    ({ chord, times }) => numeralLabel(chord) + (times > 1 ? ` ${timesWords(times)}` : ''),
  );
  return { name: 'Arpeggios outlined', value, detail: listed(detail) };
}

function range(told: MinuteTold, naming: Naming): Fact {
  const { line, along, explained } = told;
  const { notes } = explained.phrase;
  const at = (midi: number) => notes.findIndex((note) => note.midi === midi);
  const { low, high, semitones } = line.range!;
  const pitches = `${nameOf(told, at(low), naming)} to ${nameOf(told, at(high), naming)}, ${counted(semitones, 'semitone')}`;
  const name = 'Along the neck';
  if (!along) return { name, value: 'not on it', detail: pitches };
  const [from, to] = along.frets;
  const frets = to === 0 ? 'open strings' : from === to ? `fret ${to}` : `frets ${from} to ${to}`;
  return { name, value: cm(along.reach), detail: `${frets}; ${pitches}` };
}

function time({ even }: MinuteTold): Fact {
  const detail = 'spread around the beat and its halves, thirds and quarters';
  return { name: 'In time', value: spreadWords(even.spread), detail };
}

function pauses({ line }: MinuteTold): Fact {
  const { length } = line.pauses;
  const longest = Math.max(0, ...line.pauses.map(({ seconds }) => seconds));
  const detail = length === 0 ? '' : `the longest ${longest.toFixed(1)} s`;
  return { name: 'Pauses', value: length === 0 ? 'none' : String(length), detail };
}

function nameOf({ explained }: MinuteTold, note: number, naming: Naming): string {
  return noteLabel(explained.phrase.notes[note]!.name, naming, explained.key);
}

/** `4 of 92 plucks are left out: …`; null where every one was told. */
export function leftOutWords({ line, leftOut }: MinuteTold): string | null {
  if (leftOut === 0) return null;
  const are = leftOut === 1 ? 'is' : 'are';
  return `${leftOut} of ${line.notes + leftOut} plucks ${are} left out: they rang into one another or could not be told. Moves to and from them are not counted.`;
}
