import type { Step } from '../../parts/Stair.tsx';
import { chordOn, type Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { chordLabel } from '../../theory/naming.ts';
import { DEGREES, parentKey } from '../../theory/scale.ts';
import type { Shown } from '../kind.ts';

/**
 * The degrees that items stand on in a key as steps, in their order, with the chord's name where it is to be shown: of
 * a scale with fewer than seven notes those of the scale that it is part of.
 */
export function degreeSteps(
  key: Key,
  size: Size,
  shown: Pick<Shown, 'naming' | 'chordNames'>,
): Step[] {
  return DEGREES.map((degree) => {
    const chord = chordOn(parentKey(key), degree, size);
    return {
      degree,
      numeral: chord.numeral,
      ...(shown.chordNames && { name: chordLabel(chord, shown.naming) }),
    };
  });
}

/** The same, in minor with the chords borrowed from harmonic minor beside its own: `v V`, `VII vii°`. A phrase has the one or the other. */
export function withBorrowed(
  steps: readonly Step[],
  { tonic, scale }: Key,
  size: Size,
  { naming, chordNames }: Pick<Shown, 'naming' | 'chordNames'>,
): Step[] {
  return steps.map((step) => {
    if (scale !== 'minor' || ![5, 7].includes(step.degree)) return step;
    const borrowed = chordOn({ tonic, scale: 'harmonic minor' }, step.degree, size);
    return {
      ...step,
      numeral: `${step.numeral} ${borrowed.numeral}`,
      ...(chordNames && { name: `${step.name} ${chordLabel(borrowed, naming)}` }),
    };
  });
}
