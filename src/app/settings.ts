import type { KeySound } from '../sound/key.ts';
import type { Naming } from '../theory/naming.ts';

/** What the student has chosen, kept on the device. */
export interface Settings {
  readonly naming: Naming;
  /** Chord names beside the numerals. */
  readonly chordNames: boolean;
  /** Roman numerals on the steps of the stair; plain numbers where not. */
  readonly numerals: boolean;
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
  /** Which hand necks are drawn for. */
  readonly hand: (typeof HANDS)[number];
  /** The name that the last report was signed with; may be empty. */
  readonly report: { readonly name: string };
  readonly guitar: GuitarSettings;
  readonly once: Once;
}

/** What is told once, and what says when. */
export interface Once {
  /** That the page is kept for offline has been told. */
  readonly offline: boolean;
  /** That the page can be put on the home screen has been told. */
  readonly install: boolean;
  /** Rounds that have come to their end, up to two. */
  readonly rounds: number;
}

/** The guitar in hand: what was chosen, and what was found when it was tuned up last. */
export interface GuitarSettings {
  readonly inHand: boolean;
  /** Whether what is heard, and the cautions, were read once. */
  readonly told: boolean;
  /** After a verdict the next card comes by itself. */
  readonly byItself: boolean;
  /** Questions are spoken. */
  readonly spoken: boolean;
  readonly tuned: Tuned | null;
  /** Out of the loudspeaker and in at the microphone, seconds; null where it could not be measured. */
  readonly delay: number | null;
}

/** A guitar that was tuned up. */
export interface Tuned {
  /** When, ms. */
  readonly at: number;
  /** The instrument's id. */
  readonly instrument: string;
  /** How far it is off as a whole, cents. */
  readonly offset: number;
}

export const HANDS = ['lesson', 'right', 'left'] as const;

export const KEY_SOUNDS = ['cadence', 'drone', 'chord'] as const satisfies readonly KeySound[];

/** What stands until the student chooses. */
export const USUAL: Settings = {
  naming: 'english',
  chordNames: true,
  numerals: true,
  reasons: true,
  volume: 0.7,
  muted: false,
  keySound: 'cadence',
  reference: 440,
  theme: 'auto',
  hand: 'lesson',
  report: { name: '' },
  guitar: {
    inHand: false,
    told: false,
    byItself: true,
    spoken: false,
    tuned: null,
    delay: null,
  },
  once: { offline: false, install: false, rounds: 0 },
};

/** Whether nothing is to be heard: muted, or turned all the way down. */
export function isSilent({ muted, volume }: Settings): boolean {
  return muted || volume === 0;
}

/** The change that makes it heard again. */
export function heardAgain({ volume }: Settings): Pick<Settings, 'muted' | 'volume'> {
  return { muted: false, volume: volume || USUAL.volume };
}
