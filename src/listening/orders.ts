/** What the page orders of the Worker, and what it is told. */
import type { Expected, FreeNote, FreePlaying, Performance, StringTuning } from './listening.ts';

/** Every order but `silence` replaces the one before; `id` comes back with what is told of it. */
export type Request =
  | { readonly do: 'silence'; readonly id: number }
  | { readonly do: 'follow'; readonly id: number; readonly expected: Expected }
  | { readonly do: 'free'; readonly id: number; readonly playing: FreePlaying }
  | { readonly do: 'strikes'; readonly id: number }
  | {
      readonly do: 'tune';
      readonly id: number;
      /** MIDI numbers of the open strings. */
      readonly strings: readonly number[];
      readonly reference: number;
    }
  | {
      readonly do: 'delay';
      readonly id: number;
      readonly click: Float32Array;
      /** When each click is sounded, seconds on the audio clock. */
      readonly times: readonly number[];
    }
  | { readonly do: 'restart' | 'finish' | 'stop'; readonly id: number };

export type Reply =
  /** `level`: the noise, in decibels below full scale. */
  | { readonly told: 'silence'; readonly id: number; readonly level: number }
  | { readonly told: 'right'; readonly id: number; readonly index: number; readonly time: number }
  | { readonly told: 'settled'; readonly id: number; readonly performance: Performance }
  | { readonly told: 'over'; readonly id: number; readonly performance: Performance }
  | { readonly told: 'note'; readonly id: number; readonly note: FreeNote }
  | { readonly told: 'played'; readonly id: number; readonly notes: readonly FreeNote[] }
  | { readonly told: 'strike'; readonly id: number; readonly time: number }
  | { readonly told: 'string'; readonly id: number; readonly tuning: StringTuning }
  | { readonly told: 'delay'; readonly id: number; readonly seconds: number | null };

/** Samples of the microphone, and the frame of the audio clock at which they begin. */
export interface Block {
  readonly frame: number;
  readonly samples: Float32Array;
}

/** The Worker's first message: where blocks come from, where orders come from and what is told goes to. */
export interface Wiring {
  readonly blocks: MessagePort;
  readonly page: MessagePort;
  readonly rate: number;
}
