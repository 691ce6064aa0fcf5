import { Interval, Note } from 'tonal';
import { expect, test } from 'vitest';
import { above, distance } from '../../src/theory/interval.ts';
import { chroma, fifths, noteAt, octaveOf, parsePitch } from '../../src/theory/note.ts';

const SIGNS = ['', '#', '##', '###', '####', 'b', 'bb', 'bbb', 'bbbb'];
const NAMES = [...'CDEFGAB'].flatMap((letter) => SIGNS.map((signs) => letter + signs));

test('notes are where tonal has them, to four accidentals', () => {
  for (const name of NAMES) {
    expect(chroma(name), name).toBe(Note.chroma(name));
    expect(noteAt(fifths(name))).toBe(name);
    for (const octave of [-1, 0, 4, 9]) {
      const { midi } = parsePitch(`${name}${octave}`)!;
      expect(midi, name + octave).toBe(Note.get(`${name}${octave}`).height);
      expect(octaveOf(name, midi)).toBe(octave);
    }
  }
});

test('the interval between two notes is the one that tonal finds', () => {
  const plain = NAMES.filter((name) => name.length < 4);
  const pairs = plain.flatMap((from) => plain.map((to) => [from, to, Interval.distance(from, to)]));
  // What would lead down or past the octave, as C## to Dbb, it puts an octave off, and it has no name beyond four signs:
  // nothing here is spelled so.
  const within = pairs.filter(([, , found]) => /^[1-8]\D{1,3}$/.test(found!));
  expect(within.length).toBeGreaterThan(1100);
  expect(within.map(([from, to]) => [from, to, distance(from!, to!)])).toEqual(within);
});

test('a note so far above another is at that interval', () => {
  const intervals = '1P 1A 2d 2m 2M 2A 3d 3m 3M 3A 4d 4P 4A 5d 5P 5A 6d 6m 6M 6A 7d 7m 7M'.split(
    ' ',
  );
  for (const from of NAMES.filter((name) => name.length < 4)) {
    for (const interval of intervals) {
      expect(above(from, interval), `${from} ${interval}`).toBe(Note.transpose(from, interval));
      expect(distance(from, above(from, interval))).toBe(interval);
    }
  }
});
