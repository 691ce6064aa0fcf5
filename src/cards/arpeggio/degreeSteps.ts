import type { Step } from '../../parts/Stair.tsx';
import { type Chord, chordOn, type Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { chordLabel, keyLabel, numeralLabel } from '../../theory/naming.ts';
import { DEGREES, parentKey } from '../../theory/scale.ts';
import type { Shown } from '../kind.ts';

/** What is shown on steps; numerals where nothing is said of them. */
export type StepsShown = Pick<Shown, 'naming' | 'chordNames'> & Partial<Pick<Shown, 'numerals'>>;

/**
 * The degrees that items stand on in a key as steps, in their order, with the chord's name where it is to be shown, and numbers for numerals where those are hidden: of
 * a scale with fewer than seven notes those of the scale that it is part of.
 */
export function degreeSteps(key: Key, size: Size, shown: StepsShown): Step[] {
  return DEGREES.map((degree) => {
    const chord = chordOn(parentKey(key), degree, size);
    return {
      degree,
      numeral: shown.numerals === false ? String(degree) : chord.numeral,
      ...(shown.chordNames && { name: chordLabel(chord, shown.naming) }),
    };
  });
}

/** `V of B♭ major`; `degree 5 of B♭ major` where numerals are hidden. */
export function degreeInKey(
  chord: Chord,
  key: Key,
  { naming, numerals }: Pick<Shown, 'naming' | 'numerals'>,
): string {
  const degree = numerals ? numeralLabel(chord) : `degree ${chord.degree}`;
  return `${degree} of ${keyLabel(key, naming)}`;
}
