import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/theory/analysis/analysis.ts';
import { degreeOf, keyName, type Key } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import type { Phrase } from '../../src/theory/phrase.ts';
import { add, beats, compare } from '../../src/theory/rhythm.ts';
import {
  backwards,
  byDegrees,
  chordsReversed,
  eachVariation,
  fourths,
  movedTo,
  movedToBegin,
  passingIn,
  passingOut,
  upsideDown,
} from '../../src/theory/variations/variations.ts';
import { noteOn } from '../../src/theory/variations/scaleSteps.ts';
import { soundsLike } from '../../src/theory/variations/variation.ts';
import { drawPhrase } from './analysis-random.ts';

const key: Key = { tonic: 'Bb', scale: 'major' };
const KEYS: readonly Key[] = [
  { tonic: 'Eb', scale: 'major' },
  { tonic: 'G', scale: 'minor' },
  { tonic: 'C', scale: 'dorian' },
];

/** Steps of a key from its tonic (0) as a phrase in even triplets. */
const phraseOf = (steps: readonly number[], of = key): Phrase => ({
  tempo: 80,
  notes: steps.map((step, i) => ({ ...noteOn(of, step), at: beats(i, 3), length: beats(1, 3) })),
});
const names = (phrase: Phrase) => phrase.notes.map(({ name }) => name).join(' ');
const onBFlat = phraseOf([0, 2, 4, 7, 4, 2, 3, 5, 7, 10, 7, 5]);
const analysed = analyse(onBFlat, key);

describe('a phrase of two arpeggios', () => {
  it('goes backwards', () =>
    expect(names(backwards(onBFlat, key).phrase)).toBe('G Bb Eb Bb G Eb D F Bb F D Bb'));
  it('is turned upside down about its first note', () =>
    expect(names(upsideDown(phraseOf([0, 2, 4, 3]), key).phrase)).toBe('Bb G Eb F'));
  it('is moved by degrees', () =>
    expect(names(byDegrees(phraseOf([0, 2, 4]), key, 1).phrase)).toBe('C Eb G'));
  it('changes the order of its chords', () =>
    expect(names(chordsReversed(onBFlat, key, analysed)!.phrase)).toBe(
      'Eb G Bb Eb Bb G Bb D F Bb F D',
    ));
  it('goes along the cycle of fourths: I IV vii° iii vi ii V I', () => {
    const { phrase } = fourths(onBFlat, key, analysed)!;
    expect(phrase.notes.filter((_, i) => i % 6 === 0).map(({ name }) => name)).toEqual(
      'Bb Eb A D G C F Bb'.split(' '),
    );
  });
  it('goes along that cycle by its first arpeggio of three notes', () => {
    const line = phraseOf([0, 2, 4, 2]);
    const all = analyse(line, key);
    const [group] = all.groups;
    const cut = (...ends: number[]) => ({
      ...all,
      groups: ends.map((to, i) => ({ ...group!, from: ends[i - 1] ?? 0, to })),
    });
    expect(fourths(line, key, cut(2, 4))).toBeNull();
    expect(
      names(fourths(line, key, cut(1, 4))!.phrase)
        .split(' ')
        .slice(0, 6)
        .join(' '),
    ).toBe('D F D G Bb G');
    expect(fourths(line, key, cut(3, 4))!.phrase.notes).toHaveLength(24);
  });
  it('takes passing tones in, and the length stays', () => {
    const { phrase, says } = passingIn(
      phraseOf([0, 2, 4]),
      key,
      analyse(phraseOf([0, 2, 4]), key),
    )!;
    expect(names(phrase)).toBe('Bb C D Eb F');
    expect(says).toBe(
      '2 thirds are filled by the note between, which takes half of the time of the one before.',
    );
    expect(add(phrase.notes.at(-1)!.at, phrase.notes.at(-1)!.length)).toEqual(beats(1));
  });
  it('leaves its passing tone out, whose time goes to the note before', () => {
    const phrase = phraseOf([0, 1, 2, 4, 7, 4]);
    const without = passingOut(phrase, key, analyse(phrase, key))!.phrase;
    expect(names(without)).toBe('Bb D F Bb F');
    expect(without.notes[0]!.length).toEqual(beats(2, 3));
  });
  it('keeps its notes short where they were short, each at its time', () => {
    const short = ({ tempo, notes }: Phrase): Phrase => ({
      tempo,
      notes: notes.map((note) => ({ ...note, length: beats(1, 6) })),
    });
    const onsets = ({ notes }: Phrase) => notes.map(({ at }) => at);
    const phrase = short(phraseOf([0, 1, 2, 4, 7, 4]));
    const without = passingOut(phrase, key, analyse(phrase, key))!.phrase;
    expect(onsets(without)).toEqual([0, 2, 3, 4, 5].map((third) => beats(third, 3)));
    expect(without.notes[0]!.length).toEqual(beats(1, 2));
    // Behind the last note of the second arpeggio there was no time until the next one: only its length counts.
    const turned = chordsReversed(short(onBFlat), key, analyse(short(onBFlat), key))!.phrase;
    expect(onsets(turned).slice(4, 8)).toEqual([
      beats(4, 3),
      beats(5, 3),
      beats(11, 6),
      beats(13, 6),
    ]);
    expect(turned.notes.every(({ length }) => compare(length, beats(1, 6)) === 0)).toBe(true);
  });
  it('has nothing to leave out where nothing passes', () =>
    expect(passingOut(onBFlat, key, analysed)).toBeNull());
  // The nearer way: up to six semitones up, otherwise down.
  it.each([
    ['C', 'major', '2 semitones higher', 60],
    ['B', 'major', '1 semitone higher', 59],
    ['A', 'major', '1 semitone lower', 57],
    ['Eb', 'major', '5 semitones higher', 63],
    ['E', 'major', '6 semitones higher', 64],
    ['F', 'major', '5 semitones lower', 53],
    ['G', 'minor', 'with the notes of that scale on the same degrees', 55],
  ] as const)('is moved to %s %s, %s', (tonic, scale, where, midi) => {
    const moved = movedTo(phraseOf([0, 2, 4]), key, { tonic, scale });
    expect(moved.says).toBe(`It is moved to ${tonic.replace('b', '♭')} ${scale}, ${where}.`);
    expect(moved.phrase.notes[0]!.midi - phraseOf([0]).notes[0]!.midi).toBe(midi - 58);
  });
  it('says how far it lies by degrees, and how many thirds were filled', () => {
    const says = (by: number) => byDegrees(onBFlat, key, by).says;
    expect(says(2)).toBe(
      'Every note lies 2 steps of the scale higher, so every arpeggio stands on another degree.',
    );
    expect(says(-1)).toMatch(/^Every note lies 1 step of the scale lower,/);
    expect(byDegrees(onBFlat, key, -2).name).toBe('down 2 steps');
    expect(chordsReversed(onBFlat, key, analysed)!.says).toBe(
      'The arpeggios come in the order IV I, each as it was.',
    );
    const third = phraseOf([0, 2, 4, 7].slice(1));
    expect(passingIn(third, key, analyse(third, key))!.says).toMatch(/^A third is filled/);
    const passing = phraseOf([0, 1, 2, 4, 7, 4]);
    expect(passingOut(passing, key, analyse(passing, key))!.says).toBe(
      'Its passing tone is left out and the note before lasts longer.',
    );
  });
  it('is moved to begin on a note, and is named so', () => {
    const back = backwards(onBFlat, key);
    const moved = movedToBegin(back, key, onBFlat.notes[0]!);
    expect(names(moved.phrase)).toBe('Bb D G D Bb G F A D A F D');
    expect(moved.name).toBe('backwards, down 5 steps');
    expect(moved.says).toBe(back.says);
    expect(movedToBegin(back, key, back.phrase.notes[0]!)).toBe(back);
  });
  it('is moved to another mode by its degrees', () =>
    expect(
      names(movedTo(phraseOf([0, 2, 4, 6]), key, { tonic: 'Bb', scale: 'dorian' }).phrase),
    ).toBe('Bb Db F Ab'));
});

describe('variations of any phrase', () => {
  const any = fc.integer({ min: 0, max: 2 ** 31 }).map(drawPhrase);
  const isIn = (of: Key) => (name: string) => degreeOf(of, name) !== null;

  it('stay in key, each different from the phrase and from the others, told in one sentence', () => {
    fc.assert(
      fc.property(any, ({ phrase, key: own }) => {
        const all = [...eachVariation(phrase, own, analyse(phrase, own), KEYS)];
        const foreign = new Set(
          phrase.notes.map(({ name }) => name).filter((name) => !isIn(own)(name)),
        );
        expect(all.length).toBeGreaterThanOrEqual(5);
        expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
        const faults = all.filter((variation) => {
          const moved = keyName(variation.key) !== keyName(own);
          const fits = variation.phrase.notes.every(({ name, midi }, i) => {
            const wasForeign = moved
              ? variation.key.scale === own.scale && foreign.has(phrase.notes[i]!.name)
              : foreign.has(name);
            return chroma(name) === midi % 12 && isIn(variation.key)(name) !== wasForeign;
          });
          const told = /^[A-Z\d][^.]*\.$/.test(variation.says);
          return !fits || !told || soundsLike(variation.phrase, phrase);
        });
        expect(faults).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('have their notes in order, none of them without length', () => {
    fc.assert(
      fc.property(any, ({ phrase, key: own }) => {
        for (const variation of eachVariation(phrase, own, analyse(phrase, own), KEYS)) {
          const { notes } = variation.phrase;
          const inOrder = notes.every(
            ({ at, length }, i) => length.n > 0 && (i === 0 || compare(notes[i - 1]!.at, at) < 0),
          );
          expect(inOrder).toBe(true);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('come back to the phrase where they are undone', () => {
    fc.assert(
      fc.property(any, ({ phrase, key: own }) => {
        const twice = backwards(backwards(phrase, own).phrase, own).phrase;
        expect(soundsLike(twice, phrase)).toBe(true);
        const there = movedTo(phrase, own, { ...own, tonic: 'Bb' }).phrase;
        const back = movedTo(there, { ...own, tonic: 'Bb' }, own).phrase;
        const apart = back.notes.map(({ midi }, i) => midi - phrase.notes[i]!.midi);
        expect(new Set(apart).size).toBe(1);
        expect(Math.abs(apart[0]! % 12)).toBe(0);
        const inKey = phrase.notes.every(({ name }) => isIn(own)(name));
        const mirrored = upsideDown(upsideDown(phrase, own).phrase, own).phrase;
        const shifted = byDegrees(byDegrees(phrase, own, 3).phrase, own, -3).phrase;
        expect(inKey && !soundsLike(mirrored, phrase)).toBe(false);
        expect(inKey && !soundsLike(shifted, phrase)).toBe(false);
      }),
      { numRuns: 25 },
    );
  });

  it('are none of a phrase without a move', () =>
    expect([...eachVariation(phraseOf([0]), key, analyse(phraseOf([0]), key))]).toEqual([]));
});
