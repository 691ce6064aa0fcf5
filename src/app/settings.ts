import type { KeySound } from '../sound/index.ts';
import { NAMINGS, type Naming } from '../theory/naming.ts';

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

const KEY_SOUNDS: readonly KeySound[] = ['cadence', 'drone', 'chord'];

const USUAL: Settings = {
  naming: 'english',
  chordNames: true,
  reasons: true,
  volume: 0.7,
  muted: false,
  keySound: 'cadence',
  reference: 440,
  theme: 'auto',
};

/** Settings as they were stored; whatever is missing or not understood is as usual. */
export function readSettings(stored: unknown): Settings {
  const some = (typeof stored === 'object' && stored !== null ? stored : {}) as Partial<Settings>;
  const flag = (value: unknown, usual: boolean) => (typeof value === 'boolean' ? value : usual);
  const within = (value: unknown, low: number, high: number, usual: number) =>
    typeof value === 'number' && value >= low && value <= high ? value : usual;
  return {
    naming: NAMINGS.find((naming) => naming === some.naming) ?? USUAL.naming,
    chordNames: flag(some.chordNames, USUAL.chordNames),
    reasons: flag(some.reasons, USUAL.reasons),
    volume: within(some.volume, 0, 1, USUAL.volume),
    muted: flag(some.muted, USUAL.muted),
    keySound: KEY_SOUNDS.find((sound) => sound === some.keySound) ?? USUAL.keySound,
    reference: within(some.reference, 430, 450, USUAL.reference),
    theme:
      (['auto', 'light', 'dark'] as const).find((theme) => theme === some.theme) ?? USUAL.theme,
  };
}
