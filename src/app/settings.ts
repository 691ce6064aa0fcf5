import type { KeySound } from '../sound/index.ts';
import type { Naming } from '../theory/naming.ts';

/** What the student has chosen, kept on the device. */
export interface Settings {
  readonly naming: Naming;
  /** Chord names beside the numerals. */
  readonly chordNames: boolean;
  /** The sentence of why after an answer. */
  readonly reasons: boolean;
  /** 0 to 1. */
  readonly volume: number;
  readonly muted: boolean;
  /** How the key is made heard before an ear card. */
  readonly keySound: KeySound;
  /** A4 in Hz, 430 to 450. */
  readonly reference: number;
  readonly theme: 'auto' | 'light' | 'dark';
}

export const KEY_SOUNDS = ['cadence', 'drone', 'chord'] as const satisfies readonly KeySound[];

/** What stands until the student chooses. */
export const USUAL: Settings = {
  naming: 'english',
  chordNames: true,
  reasons: true,
  volume: 0.7,
  muted: false,
  keySound: 'cadence',
  reference: 440,
  theme: 'auto',
};
