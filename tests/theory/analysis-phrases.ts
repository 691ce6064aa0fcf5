import { chordOn, type Chord, type Size } from '../../src/theory/chord.ts';
import type { Embellishment } from '../../src/theory/analysis/embellishmentNames.ts';
import { parseKey, type Key } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import { midiOf, semitonesAbove } from '../../src/theory/note.ts';
import type { Phrase, PhraseNote } from '../../src/theory/phrase.ts';
import { add, beats, type Beats, times } from '../../src/theory/rhythm.ts';
import { parseBeats } from '../../src/theory/rhythmText.ts';
import { degreeOfStep, scaleNotes } from '../../src/theory/scale.ts';

/** A phrase and what is true of it. */
export interface Told {
  readonly name: string;
  readonly key: Key;
  readonly phrase: Phrase;
  readonly bar: number;
  readonly pickup: Beats;
  readonly groups: readonly { readonly from: number; readonly to: number; readonly chord: Chord }[];
  /** For each note. */
  readonly embellishments: readonly (Embellishment | null)[];
}

/** How phrases are written down in `tests/theory/data/phrases.json`, where it is explained. */
export interface Written {
  readonly name: string;
  readonly key: string;
  readonly tonic: string;
  readonly unit: string;
  readonly groups: readonly string[];
  readonly bar?: number;
  readonly pickup?: string;
}

const KINDS: Readonly<Record<string, Embellishment>> = {
  p: 'passing',
  n: 'neighbour',
  d: 'double neighbour',
  a: 'appoggiatura',
  e: 'escape',
  t: 'anticipation',
  s: 'suspension',
};

/** The MIDI number of a step of a scale: 1 is the tonic, 8 the octave above, 0 the step below. */
export function midiOfStep(key: Key, tonic: number, step: number): number {
  const note = scaleNotes(key)[degreeOfStep(step - 1) - 1]!;
  return tonic + 12 * Math.floor((step - 1) / 7) + semitonesAbove(key.tonic, note);
}

export function read(written: Written): Told {
  const key = parseKey(written.key)!;
  const tonic = midiOf(written.tonic);
  const unit = parseBeats(written.unit)!;
  const notes: PhraseNote[] = [];
  const embellishments: (Embellishment | null)[] = [];
  let at = beats(0);
  const groups = written.groups.map((text) => {
    const [numeral = '', line = ''] = text.split(': ');
    const from = notes.length;
    for (const token of line.split(' ')) {
      const match = /^(#?)(-?\d+)(?:\*(\d+))?(?:~(\w))?$/.exec(token);
      if (!match) throw new Error(`${written.name}: cannot read ${token}`);
      const [, sharp, step, units, kind] = match;
      const midi = midiOfStep(key, tonic, Number(step)) + (sharp ? 1 : 0);
      const length = times(unit, Number(units ?? 1));
      notes.push({ midi, name: spell(key, midi), at, length });
      embellishments.push(kind ? KINDS[kind]! : null);
      at = add(at, length);
    }
    return { from, to: notes.length, chord: chordNamed(key, numeral) };
  });
  return {
    name: written.name,
    key,
    phrase: { notes, tempo: 80 },
    groups,
    embellishments,
    bar: written.bar ?? 4,
    pickup: parseBeats(written.pickup ?? '0')!,
  };
}

const SIZES_BY_NUMBER: Readonly<Record<string, Size>> = {
  '': 'triad',
  7: 'seventh',
  9: 'ninth',
  11: 'eleventh',
};

const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];

function chordNamed(key: Key, numeral: string): Chord {
  const [, roman = '', number] = /^([IViv]+)[°ø+]?(7|9|11)?$/.exec(numeral)!;
  const degree = ROMAN.indexOf(roman.toUpperCase()) + 1;
  const borrowed = key.scale === 'minor' && (roman === 'V' || roman === 'vii');
  const size = SIZES_BY_NUMBER[number ?? ''];
  return chordOn(borrowed ? { ...key, scale: 'harmonic minor' } : key, degree, size!);
}
