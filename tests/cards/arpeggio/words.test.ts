/** How an arpeggio is called beside what is asked, by what the player has chosen to see. */
import { describe, expect, it } from 'vitest';
import { withBorrowed } from '../../../src/cards/arpeggio/borrowedSteps.ts';
import { degreeInKey, degreeSteps } from '../../../src/cards/arpeggio/degreeSteps.ts';
import { explainNamed } from '../../../src/cards/arpeggio/named.ts';
import { bothNames, numeralAndName } from '../../../src/cards/arpeggio/words.ts';
import { place } from '../../../src/cards/place/index.ts';
import { spot } from '../../../src/cards/spot/index.ts';
import { chordOn, type Size } from '../../../src/theory/chord.ts';
import { parseKey } from '../../../src/theory/key.ts';
import type { Naming } from '../../../src/theory/naming.ts';
import { itemIn } from '../items.ts';

describe('an arpeggio in its key', () => {
  it.each([
    ['Bb major', 5, 'triad', 'english', true, 'V of B♭ major'],
    ['Bb major', 5, 'seventh', 'english', true, 'V7 of B♭ major'],
    ['Bb major', 7, 'seventh', 'english', true, 'viiø7 of B♭ major'],
    ['Bb major', 4, 'seventh', 'english', true, 'IVmaj7 of B♭ major'],
    ['Bb major', 7, 'triad', 'german', true, 'vii° of B major'],
    ['Bb major', 2, 'ninth', 'solfege', true, 'ii9 of Si♭ major'],
    ['G minor', 3, 'seventh', 'movable', true, 'IIImaj7 of G minor'],
    ['Bb major', 5, 'seventh', 'english', false, 'degree 5 of B♭ major'],
  ] as [string, number, Size, Naming, boolean, string][])(
    '%s %i %s, as %s, numerals %s: %s',
    (key, degree, size, naming, numerals, words) => {
      const chord = chordOn(parseKey(key)!, degree, size);
      expect(degreeInKey(chord, chord.key, { naming, numerals })).toBe(words);
    },
  );

  it.each([
    ['Bb major', 'ii, Cm', 'ii (Cm)', 'english'],
    ['Bb major', 'ii', 'ii', 'degrees'],
    ['Bb major', 'ii', 'ii', 'movable'],
    ['Bb major', 'ii, Dom', 'ii (Dom)', 'solfege'],
  ] as [string, string, string, Naming][])(
    'ii of %s is %s, in a sentence %s, as %s',
    (key, both, sentence, naming) => {
      const chord = chordOn(parseKey(key)!, 2, 'triad');
      expect([bothNames(chord, naming), numeralAndName(chord, naming)]).toEqual([both, sentence]);
    },
  );
});

describe('the steps of a key', () => {
  const steps = (key: string, size: Size, numerals: boolean, chordNames = true) =>
    degreeSteps(parseKey(key)!, size, { naming: 'english', chordNames, numerals }).map(
      ({ numeral, name }) => (name ? `${numeral} ${name}` : numeral),
    );

  it.each([
    ['Bb major', 'triad', 'I B♭,ii Cm,iii Dm,IV E♭,V F,vi Gm,vii° A°'],
    ['Bb major', 'seventh', 'I B♭maj7,ii Cm7,iii Dm7,IV E♭maj7,V F7,vi Gm7,viiø Aø7'],
    ['G minor pentatonic', 'triad', 'i Gm,ii° A°,III B♭,iv Cm,v Dm,VI E♭,VII F'],
    ['Bb major pentatonic', 'triad', 'I B♭,ii Cm,iii Dm,IV E♭,V F,vi Gm,vii° A°'],
  ] as [string, Size, string][])('of %s, %ss, are %s', (key, size, told) => {
    expect(steps(key, size, true).join()).toBe(told);
    expect(steps(key, size, true, false).join()).toBe(told.replaceAll(/ [^,]+/g, ''));
    expect(steps(key, size, false, false).join()).toBe('1,2,3,4,5,6,7');
  });

  it.each([
    ['G minor', 'triad', 'i Gm,ii° A°,III B♭,iv Cm,v V Dm D,VI E♭,VII vii° F F♯°'],
    ['G minor', 'seventh', 'i Gm7,iiø Aø7,III B♭maj7,iv Cm7,v V Dm7 D7,VI E♭maj7,VII vii° F7 F♯°7'],
    ['Bb major', 'triad', 'I B♭,ii Cm,iii Dm,IV E♭,V F,vi Gm,vii° A°'],
    ['G harmonic minor', 'triad', 'i Gm,ii° A°,III+ B♭+,iv Cm,V D,VI E♭,vii° F♯°'],
  ] as [string, Size, string][])(
    'of %s, %ss, with what is borrowed, are %s',
    (name, size, told) => {
      const key = parseKey(name)!;
      const shown = { naming: 'english', chordNames: true } as const;
      const all = withBorrowed(degreeSteps(key, size, shown), key, size, shown);
      expect(all.map((step) => `${step.numeral} ${step.name}`).join()).toBe(told);
      const bare = { ...shown, chordNames: false, numerals: false };
      const plain = withBorrowed(degreeSteps(key, size, bare), key, size, bare);
      expect(plain.map((step) => `${step.numeral}${step.name ?? ''}`).join()).toBe('1,2,3,4,5,6,7');
    },
  );
});

describe('what tells two arpeggios apart', () => {
  // Of B♭ major's triads two a third apart share two notes, two a fourth apart one, neighbours none.
  it.each([
    ['2:triad', '4', 'C E♭ G. It shares E♭ and G with IV; C tells them apart.'],
    ['2:triad', '6', 'C E♭ G. It shares G with vi; C and E♭ tell them apart.'],
    ['2:triad', '5', 'C E♭ G. It shares C with V; E♭ and G tell them apart.'],
    ['2:triad', '3', 'C E♭ G. It shares no note with iii.'],
    ['1:seventh', '3', 'B♭ D F A. It shares D, F and A with iii7; B♭ tells them apart.'],
    ['1:seventh', '2', 'B♭ D F A. It shares B♭ with ii7; D, F and A tell them apart.'],
  ])('%s taken for %s: %s', (which, taken, detail) => {
    const strings = which.endsWith('seventh') ? '4-3-2-1:1-5' : '5-4:1-7';
    const card = spot.ask(itemIn(spot, `spot:Bb major:${which}:guitar:${strings}`)!, 2);
    expect(explainNamed(card, { right: false, takenFor: taken }, 'english').detail).toBe(detail);
  });
});

describe('a chord that was placed wrong', () => {
  // Cm on strings 4, 3 and 2, frets 1 to 8: E♭ 4/1, 3/8, 2/4; G 4/5, 2/8; C 3/5, 2/1.
  it.each([
    ['root', '4/5 3/5 2/4', 'In root position the root, C, is the lowest note.'],
    ['root', '4/1 3/5 2/8', 'In root position the root, C, is the lowest note.'],
    ['root', '4/1 2/4 3/5', 'E♭ stands twice; G is missing.'],
    ['root', '4/5 3/5 2/4 2/8', 'G stands twice.'],
    ['root', '4/1 3/5', 'G is missing.'],
    ['root', '4/2 3/5 2/8', 'E is not in Cm; E♭ is missing.'],
    ['root', '4/2 3/2 2/8', 'E and A are not in Cm; C and E♭ are missing.'],
    ['root', '4/1 3/8 2/1 3/5', 'E♭ and C stand twice; G is missing.'],
    ['inversions', '4/5 3/8 2/1', null],
    ['inversions', '3/5 2/4 2/8', 'In inversion the root, C, is not the lowest note.'],
  ])('as %s at %s: %s', (shapes, answer, sentence) => {
    const card = place.ask(itemIn(place, `place:Bb major:2:triad:guitar:4-3-2:1-8:${shapes}`)!, 2);
    const verdict = place.judge(card, answer);
    expect(verdict.right).toBe(sentence === null);
    if (sentence !== null)
      expect(place.explain(card, verdict, answer, 'english').sentence).toBe(sentence);
  });
});
