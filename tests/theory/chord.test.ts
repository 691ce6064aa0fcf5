import { distance } from '@tonaljs/pitch-distance';
import { describe, expect, test } from 'vitest';
import {
  chordOn,
  degreesAlike,
  sharedNotes,
  SIZES,
  type Chord,
  type Size,
} from '../../src/theory/chord.ts';
import { parseKey, type Key } from '../../src/theory/key.ts';
import { DEGREES, hasSevenNotes, SCALE_KINDS } from '../../src/theory/scale.ts';

const BB = parseKey('Bb major')!;
const allKeys: Key[] = [...'CDEFGAB'].flatMap((letter) =>
  ['bb', 'b', '', '#', '##'].flatMap((signs) =>
    SCALE_KINDS.filter(hasSevenNotes).map((scale) => ({ tonic: letter + signs, scale })),
  ),
);

const symbols = (size: 'triad' | 'seventh' | 'ninth') =>
  DEGREES.map((degree) => chordOn(BB, degree, size).symbol).join(' ');

test('the chords of B flat major are what a player calls them', () => {
  expect(symbols('triad')).toBe('Bb Cm Dm Eb F Gm Adim');
  expect(symbols('seventh')).toBe('Bbmaj7 Cm7 Dm7 Ebmaj7 F7 Gm7 Am7b5');
  expect(symbols('ninth')).toBe('Bbmaj9 Cm9 Dm7b9 Ebmaj9 F9 Gm9 Am7b5b9');
});

// The chords of the minor scales, as charts write them without printed signs (common practice).
test.each<[string, Size, string]>([
  ['C harmonic minor', 'triad', 'Cm Ddim Ebaug Fm G Ab Bdim'],
  ['C harmonic minor', 'seventh', 'CmMaj7 Dm7b5 Ebmaj7#5 Fm7 G7 Abmaj7 Bdim7'],
  ['C harmonic minor', 'ninth', 'CmMaj9 Dm7b5b9 Ebmaj9#5 Fm9 G7b9 Abmaj7#9 Bdim7b9'],
  ['C melodic minor', 'triad', 'Cm Dm Ebaug F G Adim Bdim'],
  ['C melodic minor', 'seventh', 'CmMaj7 Dm7 Ebmaj7#5 F7 G7 Am7b5 Bm7b5'],
])('the chords of %s are, as a %s, %s', (name, size, written) => {
  const key = parseKey(name)!;
  expect(DEGREES.map((degree) => chordOn(key, degree, size).symbol).join(' ')).toBe(written);
});

// Case and sign by the quality of the triad, ø and ° by the seventh; numbers are for the label. Common practice.
test.each<[string, Size, string]>([
  ['Bb major', 'triad', 'I ii iii IV V vi vii°'],
  ['Bb major', 'seventh', 'I ii iii IV V vi viiø'],
  ['C harmonic minor', 'triad', 'i ii° III+ iv V VI vii°'],
  ['C harmonic minor', 'seventh', 'i iiø III+ iv V VI vii°'],
  ['C melodic minor', 'ninth', 'i ii III+ IV V viø viiø'],
  ['D mixolydian', 'seventh', 'I ii iiiø IV v vi VII'],
])('on the steps of %s a %s is written %s', (name, size, numerals) => {
  const key = parseKey(name)!;
  expect(DEGREES.map((degree) => chordOn(key, degree, size).numeral).join(' ')).toBe(numerals);
});

test('I and vi share two notes', () =>
  expect(sharedNotes(chordOn(BB, 1, 'triad'), chordOn(BB, 6, 'triad'))).toEqual(['Bb', 'D']));

test('elevenths and thirteenths say which members are altered', () => {
  const C = parseKey('C major')!;
  expect(DEGREES.map((degree) => chordOn(C, degree, 'eleventh').symbol)).toEqual([
    'Cmaj11',
    'Dm11',
    'Em11b9',
    'Fmaj9#11',
    'G11',
    'Am11',
    'Bm11b5b9',
  ]);
  expect(DEGREES.map((degree) => chordOn(C, degree, 'thirteenth').symbol)).toEqual([
    'Cmaj13',
    'Dm13',
    'Em11b9b13',
    'Fmaj13#11',
    'G13',
    'Am11b13',
    'Bm11b5b9b13',
  ]);
});

function chordsOf(sizes: readonly Size[]): Chord[] {
  return allKeys.flatMap((key) =>
    DEGREES.flatMap((degree) => sizes.map((size) => chordOn(key, degree, size))),
  );
}

test('every chord of every key stacks letters in thirds and has a symbol and a numeral', () => {
  const letters = 'CEGBDFA'.repeat(2);
  const faulty = chordsOf(SIZES).filter(({ notes, root, symbol, numeral, quality }) => {
    const stacked = notes.map((note) => note[0]).join('');
    const words = `${symbol} ${numeral} ${quality.triad} ${quality.seventh}`;
    return (
      !letters.slice(letters.indexOf(root[0]!)).startsWith(stacked) || words.includes('undefined')
    );
  });
  expect(faulty).toEqual([]);
});

test('a symbol tells chords apart: the same symbol is always the same notes', () => {
  const seen = new Map<string, string>();
  const faulty = chordsOf(SIZES).filter(({ symbol, notes }) => {
    const before = seen.get(symbol) ?? notes.join();
    seen.set(symbol, before);
    return before !== notes.join();
  });
  expect(faulty).toEqual([]);
});

describe('degreesAlike', () => {
  test('a thirteenth is the whole scale: its notes tell no degree', () => {
    expect(degreesAlike(chordOn(BB, 2, 'thirteenth'))).toEqual(DEGREES);
  });

  test('up to the eleventh a chord’s notes tell its degree, in every key', () => {
    const faulty = chordsOf(SIZES.slice(0, 4)).filter(
      (chord) => degreesAlike(chord).join() !== String(chord.degree),
    );
    expect(faulty).toEqual([]);
  });
});

test('what bears no chord is said', () => {
  expect(() => chordOn(parseKey('A blues')!, 1, 'triad')).toThrow('not seven notes');
  for (const degree of [8, 0, -1, 1.5])
    expect(() => chordOn(BB, degree, 'triad')).toThrow(`${degree} is not a degree: take 1 to 7.`);
});

// What the suffixes can say: natural, flat and sharp ninths and elevenths, natural and flat thirteenths.
test('no chord of any scale has another ninth, eleventh or thirteenth than its symbol can tell', () => {
  const above = new Set(
    SCALE_KINDS.filter(hasSevenNotes).flatMap((scale) =>
      DEGREES.flatMap((degree) => {
        const { root, notes } = chordOn({ tonic: 'C', scale }, degree, 'thirteenth');
        return notes.slice(4).map((note) => distance(root, note));
      }),
    ),
  );
  expect([...above].toSorted()).toEqual(['2A', '2M', '2m', '4A', '4P', '4d', '6M', '6m']);
});
