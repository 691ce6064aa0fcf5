import { NAMINGS, type Naming } from '../../theory/naming.ts';

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
  readonly theme: 'auto' | 'light' | 'dark';
}

const USUAL: Settings = {
  naming: 'english',
  chordNames: true,
  reasons: true,
  volume: 0.7,
  muted: false,
  theme: 'auto',
};

/** Settings as they were stored; whatever is missing or not understood is as usual. */
export function readSettings(stored: unknown): Settings {
  const some = (typeof stored === 'object' && stored !== null ? stored : {}) as Partial<Settings>;
  const flag = (value: unknown, usual: boolean) => (typeof value === 'boolean' ? value : usual);
  const { volume } = some;
  return {
    naming: NAMINGS.find((naming) => naming === some.naming) ?? USUAL.naming,
    chordNames: flag(some.chordNames, USUAL.chordNames),
    reasons: flag(some.reasons, USUAL.reasons),
    volume: typeof volume === 'number' && volume >= 0 && volume <= 1 ? volume : USUAL.volume,
    muted: flag(some.muted, USUAL.muted),
    theme:
      (['auto', 'light', 'dark'] as const).find((theme) => theme === some.theme) ?? USUAL.theme,
  };
}
