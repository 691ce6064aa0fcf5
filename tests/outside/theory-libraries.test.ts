import { createRequire } from 'node:module';
import {
  getNoteNamesForRootAndNoteCollectionKey,
  guitarTunings,
  bassGuitarTunings,
  folkFrettedStringTunings,
} from '@musodojo/music-theory-data';
import { describe, expect, test } from 'vitest';
import { INSTRUMENTS, openMidi } from '../../src/neck/instrument.ts';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import { hasSevenNotes, SCALE_KINDS, scaleNotes, type ScaleKind } from '../../src/theory/scale.ts';

interface Named {
  simple(): string[];
}

// teoria 2.5.0 has no types of its own.
const teoria = createRequire(import.meta.url)('teoria') as {
  chord(symbol: string): Named;
  note(name: string): { scale(kind: string): Named };
};

const TONICS = [
  'C',
  'C#',
  'Db',
  'D',
  'D#',
  'Eb',
  'E',
  'E#',
  'Fb',
  'F',
  'F#',
  'Gb',
  'G',
  'G#',
  'Ab',
  'A',
  'A#',
  'Bb',
  'B',
  'Cb',
];
const DEGREES = [1, 2, 3, 4, 5, 6, 7];

/** `f##` or `fx` → `F##`. */
const ours = (name: string) => name.charAt(0).toUpperCase() + name.slice(1).replaceAll('x', '##');

interface Names {
  readonly teoria?: string;
  readonly musodojo?: string;
}

/** What each library calls our scales; none where it does not have it, or not by letters. */
const CALLED: Readonly<Record<ScaleKind, Names>> = {
  major: { teoria: 'ionian', musodojo: 'ionian' },
  minor: { teoria: 'aeolian', musodojo: 'aeolian' },
  'harmonic minor': { teoria: 'harmonicminor', musodojo: 'harmonicMinor' },
  'melodic minor': { teoria: 'melodicminor', musodojo: 'melodicMinor' },
  dorian: { teoria: 'dorian', musodojo: 'dorian' },
  phrygian: { teoria: 'phrygian', musodojo: 'phrygian' },
  lydian: { teoria: 'lydian', musodojo: 'lydian' },
  mixolydian: { teoria: 'mixolydian', musodojo: 'mixolydian' },
  locrian: { teoria: 'locrian', musodojo: 'locrian' },
  'locrian #6': { musodojo: 'locrianNatural6' },
  'major #5': { musodojo: 'ionianSharp5' },
  'dorian #4': { musodojo: 'dorianSharp4' },
  'phrygian dominant': { musodojo: 'phrygianDominant' },
  'lydian #2': { musodojo: 'lydianSharp2' },
  'altered bb7': { musodojo: 'superLocrianDoubleFlat7' },
  'dorian b2': { musodojo: 'dorianFlat2' },
  'lydian augmented': { musodojo: 'lydianAugmented' },
  'lydian dominant': { musodojo: 'lydianDominant' },
  'mixolydian b6': { musodojo: 'mixolydianFlat6' },
  'locrian #2': { musodojo: 'aeolianFlat5' },
  altered: { musodojo: 'altered' },
  'major pentatonic': { teoria: 'majorpentatonic', musodojo: 'majorPentatonic' },
  'minor pentatonic': { teoria: 'minorpentatonic', musodojo: 'minorPentatonic' },
  blues: { teoria: 'blues' },
};

const spelled = (scale: ScaleKind, tonics: readonly string[]) =>
  tonics.map((tonic) => scaleNotes({ tonic, scale }).join(' '));

/** The scales that a library has, with its names for them. */
const known = (library: keyof Names) =>
  SCALE_KINDS.flatMap((scale): [ScaleKind, string][] => {
    const name = CALLED[scale][library];
    return name ? [[scale, name]] : [];
  });

describe('every scale on every tonic is spelled', () => {
  test.each(known('teoria'))('%s as teoria 2.5.0 spells it', (scale, name) => {
    expect(spelled(scale, TONICS)).toEqual(
      TONICS.map((tonic) => teoria.note(tonic).scale(name).simple().map(ours).join(' ')),
    );
  });

  test.each(known('musodojo'))('%s as @musodojo/music-theory-data 28 spells it', (scale, name) => {
    // It knows no tonic beyond seven accidentals, and no note with three.
    const tonics = TONICS.filter(
      (tonic) =>
        !['E#', 'Fb'].includes(tonic) &&
        scaleNotes({ tonic, scale }).every((note) => note.length < 4),
    );
    expect(tonics.length).toBeGreaterThanOrEqual(17);
    expect(spelled(scale, tonics)).toEqual(tonics.map((tonic) => musodojo(tonic, name).join(' ')));
  });
});

/** Its notes in our spelling, without the octave that closes its scales. */
function musodojo(tonic: string, name: string): string[] {
  const root = tonic.replace('b', '♭').replace('#', '♯');
  return getNoteNamesForRootAndNoteCollectionKey(root as never, name as never)
    .slice(0, -1)
    .map((note) =>
      ours(
        note.replaceAll('♭', 'b').replaceAll('♯', '#').replaceAll('𝄪', '##').replaceAll('𝄫', 'bb'),
      ),
    );
}

const sorted = (notes: readonly string[]) => notes.toSorted().join(' ');

/** What a listed instrument's open strings sound, lowest-numbered string last. */
const midi = (name: string) => openMidi(INSTRUMENTS.find((one) => one.name === name)!).toReversed();

describe('chords of every scale, degree and size', () => {
  const all = SCALE_KINDS.filter(hasSevenNotes).flatMap((scale) =>
    TONICS.flatMap((tonic) =>
      DEGREES.flatMap((degree) => SIZES.map((size) => chordOn({ tonic, scale }, degree, size))),
    ),
  );

  test('have the notes that teoria 2.5.0 reads from their symbols', () => {
    // It reads no root with two accidentals and writes no note with three.
    const read = all.filter(
      ({ root, notes }) => root.length < 3 && notes.every((note) => note.length < 4),
    );
    expect(read.length).toBeGreaterThan(12500);
    const faulty = read.filter(
      ({ symbol, notes }) => sorted(teoria.chord(symbol).simple().map(ours)) !== sorted(notes),
    );
    expect(faulty.map(({ symbol }) => symbol)).toEqual([]);
  });
});

test('the listed tunings sound as @musodojo/music-theory-data 28 has them', () => {
  expect(midi('guitar')).toEqual(guitarTunings.guitarStandardE.openMidiNotes);
  expect(midi('drop D')).toEqual(guitarTunings.guitarDropD.openMidiNotes);
  expect(midi('open G')).toEqual(guitarTunings.guitarOpenG.openMidiNotes);
  expect(midi('open D')).toEqual(guitarTunings.guitarOpenD.openMidiNotes);
  expect(midi('DADGAD')).toEqual(guitarTunings.guitarDadgad.openMidiNotes);
  expect(midi('half step down')).toEqual(guitarTunings.guitarHalfStepDown.openMidiNotes);
  expect(midi('bass')).toEqual(bassGuitarTunings.bassStandardEadg.openMidiNotes);
  expect(midi('5-string bass')).toEqual(bassGuitarTunings.bassFiveStringBeadg.openMidiNotes);
  expect(midi('ukulele')).toEqual(folkFrettedStringTunings.ukuleleStandardGcea.openMidiNotes);
});
