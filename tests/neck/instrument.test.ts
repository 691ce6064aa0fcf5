import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fretsLeft,
  GUITAR,
  instrumentId,
  INSTRUMENTS,
  openMidi,
  tuningText,
  soundingPitches,
} from '../../src/neck/instrument.ts';
import { instrumentFault, instrumentFromId } from '../../src/neck/instrumentFault.ts';
import { midiOf } from '../../src/theory/note.ts';

const instrument = fc
  .tuple(
    fc.array(
      fc.tuple(fc.constantFrom('C', 'D', 'Eb', 'F#', 'G', 'Bb'), fc.constantFrom('2', '3')),
      { minLength: 4, maxLength: 9 },
    ),
    fc.integer({ min: 0, max: 11 }),
  )
  .map(([tuning, capo]) => ({ ...GUITAR, tuning: tuning.map((pitch) => pitch.join('')), capo }));

test('every listed instrument makes sense', () => {
  for (const one of INSTRUMENTS) expect(instrumentFault(one)).toBeNull();
  expect(new Set(INSTRUMENTS.map(({ name }) => name)).size).toBe(INSTRUMENTS.length);
});

// MIDI of the open strings from the lowest string up, worked out from C4 = 60; frets; length of the strings in mm.
test.each([
  ['guitar', [40, 45, 50, 55, 59, 64], 22, 648],
  ['drop D', [38, 45, 50, 55, 59, 64], 22, 648],
  ['open G', [38, 43, 50, 55, 59, 62], 22, 648],
  ['open D', [38, 45, 50, 54, 57, 62], 22, 648],
  ['DADGAD', [38, 45, 50, 55, 57, 62], 22, 648],
  ['half step down', [39, 44, 49, 54, 58, 63], 22, 648],
  ['7-string guitar', [35, 40, 45, 50, 55, 59, 64], 24, 648],
  ['8-string guitar', [30, 35, 40, 45, 50, 55, 59, 64], 24, 686],
  ['baritone guitar', [35, 40, 45, 50, 54, 59], 22, 686],
  ['bass', [28, 33, 38, 43], 20, 864],
  ['5-string bass', [23, 28, 33, 38, 43], 20, 864],
  // Its fourth string is tuned above the third (re-entrant).
  ['ukulele', [67, 60, 64, 69], 15, 380],
])('a %s is strung %o', (name, open, frets, scaleLength) => {
  const one = INSTRUMENTS.find((other) => other.name === name)!;
  expect(openMidi(one).toReversed()).toEqual(open);
  expect(one).toMatchObject({ frets, scaleLength, capo: 0, leftHanded: false });
});

test('a capo raises the open strings and leaves fewer frets', () => {
  const capoed = { ...GUITAR, capo: 3 };
  expect(openMidi(capoed)).toEqual([67, 62, 58, 53, 48, 43]);
  expect(fretsLeft(capoed)).toBe(19);
  expect(tuningText(capoed)).toBe('E2 A2 D3 G3 B3 E4');
});

test('what the open strings sound is spelled with few signs, and is the tuning without a capo', () => {
  const sounding = (id: string) => soundingPitches(instrumentFromId(id)!).join(' ');
  expect(sounding('guitar')).toBe('E2 A2 D3 G3 B3 E4');
  expect(sounding('guitar+1')).toBe('F2 Bb2 Eb3 Ab3 C4 F4');
  expect(sounding('guitar+2')).toBe('F#2 B2 E3 A3 C#4 F#4');
  expect(sounding('guitar+3')).toBe('G2 C3 F3 Bb3 D4 G4');
  expect(sounding('half-step-down+1')).toBe('E2 A2 D3 G3 B3 E4');
  expect(sounding('guitar+11')).toBe('Eb3 Ab3 Db4 Gb4 Bb4 Eb5');
});

test('what the open strings sound is the pitch that they sound', () => {
  fc.assert(
    fc.property(instrument, (one) => {
      expect(soundingPitches(one).map(midiOf).toReversed()).toEqual(openMidi(one));
    }),
  );
});

describe('instrumentId', () => {
  test('is a listed name or the tuning, and the capo', () => {
    expect(instrumentId(GUITAR)).toBe('guitar');
    expect(instrumentId({ ...GUITAR, name: 'my old one', capo: 2, leftHanded: true })).toBe(
      'guitar+2',
    );
    expect(instrumentId({ ...GUITAR, tuning: ['D2', 'A2', 'D3', 'G3', 'B3', 'E4'] })).toBe(
      'drop-D',
    );
    expect(instrumentId({ ...GUITAR, tuning: ['C2', 'G2', 'C3', 'G3', 'C4', 'E4'] })).toBe(
      'C2.G2.C3.G3.C4.E4',
    );
  });

  test('reads back as an instrument with the same id, and sounds alike', () => {
    fc.assert(
      fc.property(fc.oneof(instrument, fc.constantFrom(...INSTRUMENTS)), (one) => {
        fc.pre(instrumentFault(one) === null);
        const id = instrumentId(one);
        const back = instrumentFromId(id)!;
        expect(id).not.toContain(':');
        expect(instrumentId(back)).toBe(id);
        expect(openMidi(back)).toEqual(openMidi(one));
      }),
    );
  });

  test.each(['', 'guitar+', 'guitar+12', 'guitar+1+1', 'E2.A2', 'harp', 'E2.A2.D3.H3'])(
    '“%s” names no instrument',
    (id) => {
      expect(instrumentFromId(id)).toBeNull();
    },
  );
});

describe('instrumentFault names what is wrong', () => {
  const tuned = (...tuning: string[]) => instrumentFault({ ...GUITAR, tuning });

  test('a string that is no note', () => {
    expect(tuned('E2', 'H2', 'D3', 'G3', 'B3', 'E4')).toBe(
      'String 5 is tuned to “H2”: write a note with its octave, like A2 or Bb3.',
    );
    expect(tuned('E2', 'A', 'D3', 'G3', 'B3', 'E4')).toContain('String 5');
  });

  test('a string that no string sounds', () => {
    expect(tuned('E2', 'A2', 'D3', 'G3', 'B3', 'E8')).toContain('String 1 is tuned to E8');
  });

  test('a string that an octave got wrong', () => {
    expect(tuned('E2', 'A2', 'D3', 'G4', 'B3', 'E4')).toBe(
      'String 3 (G4) is more than an octave away from string 4 (D3): check its octave.',
    );
  });

  test.each([
    ['frets', [12, 27], [11, 28, 12.5]],
    ['scaleLength', [250, 1000], [249.9, 1000.1]],
    ['capo', [0, 11], [-1, 12, 1.5]],
  ] as const)('%s from %o on and no further', (what, kept, beyond) => {
    for (const value of kept)
      expect(instrumentFault({ ...GUITAR, frets: 24, [what]: value })).toBeNull();
    for (const value of beyond)
      expect(instrumentFault({ ...GUITAR, frets: 24, [what]: value })).toContain(`not ${value}`);
  });

  test('four to nine strings, from A0 to G5, an octave apart at most', () => {
    const nine = 'E1 A1 D2 G2 C3 F3 A3 C4 E4'.split(' ');
    expect([tuned(...nine), tuned(...nine.slice(0, 4))]).toEqual([null, null]);
    expect(tuned(...nine, 'G4')).toContain('10 strings');
    expect(tuned('A2')).toContain('1 string:');
    expect(tuned('A0', 'A1', 'A2', 'A3', 'G4', 'G5')).toBeNull();
    expect(tuned('Ab0', 'Ab1', 'A2', 'A3')).toMatch(/^String 4 is tuned to Ab0, which no string/);
    expect(tuned('A2', 'A3', 'G#4', 'G#5')).toMatch(/^String 1 is tuned to G#5/);
    expect(tuned('A2', 'Bb3', 'C4', 'D4')).toMatch(/^String 3 \(Bb3\) is more than an octave/);
  });

  test('strings, frets, length and capo out of bounds', () => {
    expect(tuned('E2', 'A2', 'D3')).toContain('3 strings');
    expect(instrumentFault({ ...GUITAR, frets: 30 })).toContain('12 to 27 frets, not 30');
    expect(instrumentFault({ ...GUITAR, scaleLength: 65 })).toContain('1000 mm, not 65.');
    expect(instrumentFault({ ...GUITAR, scaleLength: Number.NaN })).toMatch(/1000 mm\.$/);
    expect(instrumentFault({ ...GUITAR, capo: 12 })).toContain('not 12');
  });
});

test('what is named after a property of objects is no instrument, alone or with a capo', () => {
  const names = Object.getOwnPropertyNames(Object.prototype);
  fc.assert(
    fc.property(fc.constantFrom(...names), fc.integer({ min: 0, max: 11 }), (name, capo) => {
      expect(instrumentFromId(name)).toBeNull();
      expect(instrumentFromId(`${name}+${capo}`)).toBeNull();
      expect(instrumentFromId(`guitar+${name}`)).toBeNull();
      const strange = { ...GUITAR, name, tuning: [name, ...GUITAR.tuning.slice(1)] };
      expect(instrumentFault(strange)).toMatch(/^String 6 is tuned to/);
    }),
  );
});
