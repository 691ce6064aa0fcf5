import type { Step } from '../../parts/Stair.tsx';
import { chordOn, type Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { chordLabel } from '../../theory/naming.ts';
import type { StepsShown } from './degreeSteps.ts';

/** The steps, in minor with the chords borrowed from harmonic minor beside its own: `v V`, `VII vii°`. A phrase has the one or the other. */
export function withBorrowed(
  steps: readonly Step[],
  { tonic, scale }: Key,
  size: Size,
  { naming, chordNames, numerals = true }: StepsShown,
): Step[] {
  return steps.map((step) => {
    if (scale !== 'minor' || ![5, 7].includes(step.degree)) return step;
    const borrowed = chordOn({ tonic, scale: 'harmonic minor' }, step.degree, size);
    return {
      ...step,
      numeral: numerals ? `${step.numeral} ${borrowed.numeral}` : step.numeral,
      ...(chordNames && { name: `${step.name} ${chordLabel(borrowed, naming)}` }),
    };
  });
}
