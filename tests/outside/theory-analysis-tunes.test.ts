import { describe, expect, it } from 'vitest';
import { chordsUnder, type TuneNote } from './tunes.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { parseKey, type Key } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import { parseBeats, toNumber } from '../../src/theory/rhythm.ts';
import data from './data/phrases-tunes.json';

// Nine tunes with chord symbols from the examples of Debian's abcmidi and abcm2ps; see the file.
interface Tune {
  readonly key: Key;
  readonly roots: readonly number[];
  readonly stretches: readonly (readonly TuneNote[])[];
}

const number = (text: string) => toNumber(parseBeats(text)!);

const tunes: Tune[] = data.tunes.map(({ key, segments }) => {
  const parts = segments.map((segment) => segment.split(': '));
  return {
    key: parseKey(key)!,
    roots: parts.map(([root]) => chroma(root!)),
    stretches: parts.map(([, notes]) =>
      notes!.split(' ').map((note) => {
        const [midi, at, length] = note.split(/[@*]/);
        return { midi: Number(midi), at: number(at!), length: number(length!) };
      }),
    ),
  };
});

/** The diatonic triad that sounds longest; what an analysis has to be better than. */
function naive(notes: readonly TuneNote[], key: Key): number {
  const sums = [1, 2, 3, 4, 5, 6, 7].map((degree) => {
    const chord = chordOn(key, degree, 'triad').notes.map(chroma);
    return notes.reduce(
      (sum, { midi, length }) => sum + (chord.includes(midi % 12) ? length : 0),
      0,
    );
  });
  return chroma(chordOn(key, sums.indexOf(Math.max(...sums)) + 1, 'triad').root);
}

function rootsRight(rootsOf: (tune: Tune) => readonly number[]): number {
  const hits = tunes.flatMap((tune) => {
    const given = rootsOf(tune);
    return tune.roots.map((root, i) => Number(given[i] === root));
  });
  return (100 * hits.reduce((a, b) => a + b, 0)) / hits.length;
}

describe('chords under tunes', () => {
  const ours = rootsRight(({ stretches, key }) =>
    chordsUnder(stretches, key).map(({ root }) => chroma(root)),
  );
  const plain = rootsRight(({ stretches, key }) => stretches.map((notes) => naive(notes, key)));
  const always = rootsRight(({ roots, key }) => roots.map(() => chroma(key.tonic)));

  it('have the root of the printed symbol ten points more often than by the longest-sounding triad', () => {
    console.log(
      `roots right: ${ours.toFixed(1)} %, longest-sounding triad ${plain.toFixed(1)} %, always I ${always.toFixed(1)} %`,
    );
    expect(ours).toBeGreaterThan(plain + 10);
    expect(ours).toBeGreaterThan(always + 10);
  });
});
