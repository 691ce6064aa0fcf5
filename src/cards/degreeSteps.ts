import type { Step } from '../parts/Stair.tsx';
import { chordOn, type Size } from '../theory/chord.ts';
import type { Key } from '../theory/key.ts';
import { chordLabel } from '../theory/naming.ts';
import { scaleNotes } from '../theory/scale.ts';
import type { Shown } from './kind.ts';

/** The degrees of a key as steps, in their order, with the chord's name where it is to be shown. */
export function degreeSteps(
  key: Key,
  size: Size,
  shown: Pick<Shown, 'naming' | 'chordNames'>,
): Step[] {
  return scaleNotes(key).map((_, index) => {
    const chord = chordOn(key, index + 1, size);
    return {
      degree: index + 1,
      numeral: chord.numeral,
      ...(shown.chordNames && { name: chordLabel(chord, shown.naming) }),
    };
  });
}
