import type { NoteName } from './note.ts';
import type { ScaleKind } from './scale.ts';

/** A key: where its first degree is and what scale stands on it. */
export interface Key {
  readonly tonic: NoteName;
  readonly scale: ScaleKind;
}
