import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fretsLeft, GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';
import { moveAcross, moveAlong, usualInterval } from '../../src/neck/move.ts';
import { midiAt, type Place } from '../../src/neck/place.ts';
import { parsePlace } from '../../src/neck/placeText.ts';

const places = (text: string): Place[] => text.split(' ').map((place) => parsePlace(place)!);
const BASS = INSTRUMENTS.find(({ name }) => name === 'bass')!;
const UKULELE = INSTRUMENTS.find(({ name }) => name === 'ukulele')!;

describe('moveAcross', () => {
  test('leaves a shape as it is between strings tuned alike', () => {
    const moved = moveAcross(GUITAR, places('6/3 5/2 5/5'), 1)!;
    expect(moved.places).toEqual(places('5/3 4/2 4/5'));
    expect(moved.bent).toEqual([]);
    expect(moved.sentence).toBe(
      'The shape stays as it is: the strings it crosses are tuned alike.',
    );
  });

  test('bends what crosses from string 3 to string 2, up one fret', () => {
    const moved = moveAcross(GUITAR, places('4/3 3/2 3/5'), 1)!;
    expect(moved.places).toEqual(places('3/3 2/3 2/6'));
    expect(moved.bent).toEqual(places('2/3 2/6'));
    expect(moved.sentence).toBe(
      'Strings 3 and 2 are tuned a major third apart, the others a fourth apart: what crosses them moves up one fret.',
    );
  });

  // Two strings so far apart, where the others are a fourth: what crosses to them moves by the difference.
  test.each([
    ['D3', 'in unison', 'up 5 frets'],
    ['Eb3', 'a semitone apart', 'up 4 frets'],
    ['E3', 'a whole tone apart', 'up 3 frets'],
    ['F3', 'a minor third apart', 'up 2 frets'],
    ['F#3', 'a major third apart', 'up one fret'],
    ['G#3', 'a tritone apart', 'down one fret'],
    ['A3', 'a fifth apart', 'down 2 frets'],
    ['Bb3', 'a minor sixth apart', 'down 3 frets'],
    ['B3', 'a major sixth apart', 'down 4 frets'],
    ['C4', 'a minor seventh apart', 'down 5 frets'],
    ['C#4', 'a major seventh apart', 'down 6 frets'],
    ['D4', 'an octave apart', 'down 7 frets'],
  ])('to a string in %s, %s, moves it %s', (pitch, apart, moves) => {
    const instrument = { ...GUITAR, tuning: ['B1', 'E2', 'A2', 'D3', pitch] };
    const moved = moveAcross(instrument, places('2/10'), 1)!;
    expect(moved.sentence).toBe(
      `Strings 2 and 1 are tuned ${apart}, the others a fourth apart: what crosses them moves ${moves}.`,
    );
    const [way, by] = moves.split(' ');
    const frets = by === 'one' ? 1 : Number(by);
    expect(moved.places).toEqual([{ string: 1, fret: way === 'up' ? 10 + frets : 10 - frets }]);
  });

  test('bends it down again on the way back', () => {
    const moved = moveAcross(GUITAR, places('3/3 2/3 2/6'), -1)!;
    expect(moved.places).toEqual(places('4/3 3/2 3/5'));
    expect(moved.sentence).toContain('moves down one fret');
  });

  test('bends nothing on a bass', () => {
    expect(moveAcross(BASS, places('4/3 3/2 2/5'), 1)!.bent).toEqual([]);
  });

  test('says that a ukulele’s fourth string is tuned the other way round', () => {
    const moved = moveAcross(UKULELE, places('4/1 3/3'), 1)!;
    expect(midiAt(UKULELE, moved.places[0]!) - midiAt(UKULELE, { string: 4, fret: 1 })).toBe(
      usualInterval(UKULELE),
    );
    expect(moved.sentence).toBe(
      'Strings 4 and 3 are tuned a fifth apart, string 4 the higher, strings 3 and 2 are tuned a major third apart, the others a fourth apart: the dots that cross them move.',
    );
  });

  test('says that two strings tuned otherwise may make up for one another', () => {
    // From string 1: a fourth, a fourth, a major third, a tritone, a fourth.
    const tuning = ['E2', 'A2', 'Eb3', 'G3', 'C4', 'F4'];
    const moved = moveAcross({ ...GUITAR, tuning }, places('5/3'), 2)!;
    expect(moved.bent).toEqual([]);
    expect(moved.sentence).toBe(
      'Strings 5 and 4 are tuned a tritone apart, strings 4 and 3 are tuned a major third apart, the others a fourth apart: the bends cancel out.',
    );
  });

  test('is null where a string or a fret is not there, and for open strings', () => {
    expect(moveAcross(GUITAR, places('2/3 1/3'), 1)).toBeNull();
    expect(moveAcross(GUITAR, places('3/1 2/1'), -1)).toBeNull();
    expect(moveAcross(GUITAR, places('5/3 4/2 3/0'), 1)).toBeNull();
    expect(moveAlong(GUITAR, places('5/3 4/2 3/0'), 1)).toBeNull();
    expect(moveAlong(GUITAR, places('5/3 4/2'), -2)).toBeNull();
    expect(moveAlong(GUITAR, places('5/3 4/2'), 20)).toBeNull();
  });
});

const anyShape = fc.constantFrom(...INSTRUMENTS).chain((instrument) =>
  fc.record({
    instrument: fc.constant(instrument),
    shape: fc.array(
      fc.record({
        string: fc.integer({ min: 1, max: instrument.tuning.length }),
        fret: fc.integer({ min: 1, max: fretsLeft(instrument) }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    strings: fc.constantFrom(1, -1, 2),
    frets: fc.integer({ min: -12, max: 12 }),
  }),
);

test('moving a shape and back changes nothing, along and across, on every instrument', () => {
  fc.assert(
    fc.property(anyShape, ({ instrument, shape, strings, frets }) => {
      const along = moveAlong(instrument, shape, frets);
      expect(along ? moveAlong(instrument, along, -frets) : shape).toEqual(shape);
      const across = moveAcross(instrument, shape, strings);
      expect(across ? moveAcross(instrument, across.places, -strings)!.places : shape).toEqual(
        shape,
      );
    }),
  );
});

test('a moved shape keeps its intervals: every note moves as far as the others', () => {
  fc.assert(
    fc.property(anyShape, ({ instrument, shape, strings }) => {
      const moved = moveAcross(instrument, shape, strings)?.places ?? shape;
      const steps = shape.map(
        (place, i) => midiAt(instrument, moved[i]!) - midiAt(instrument, place),
      );
      expect(new Set(steps).size).toBe(1);
    }),
  );
});
