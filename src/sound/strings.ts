import type { Context } from 'tone';
import { frequency } from '../theory/note.ts';
import type { Pluck } from './plan.ts';
import type { Rendered } from './render.ts';
import { RENDERED_RATE } from './string.ts';

/** By its articulation: the part of a note's strength that is left, how bright it is, how softly it sets in (seconds). */
const ATTACKS = {
  pluck: { strength: 1, brightness: 1, onset: 0 },
  slide: { strength: 0.7, brightness: 0.45, onset: 0.003 },
  'hammer-on': { strength: 0.65, brightness: 0.25, onset: 0.0015 },
  'pull-off': { strength: 0.7, brightness: 0.5, onset: 0.0005 },
} as const;

/** Time constants in seconds of an end: by the next note on the string (−60 dB in 5 ms), and by the hand. */
const CUT = 0.0007;
const HAND = 0.012;

/** Cut-off of the low-pass that strength is heard by, in Hz; never below the note itself. */
const brightnessOf = (strength: number, brightness: number, hertz: number): number =>
  Math.min(16000, Math.max(2 * hertz, 300 * 2 ** (5 * strength) * brightness));

/** How a note begins. */
interface Beginning {
  /** A rendered note, and how much faster it is to be played. */
  readonly buffer: AudioBuffer;
  readonly rate: number;
  /** Of the low-pass, in Hz. */
  readonly cutoff: number;
  readonly level: number;
  /** When, and how softly it sets in, as a time constant; in seconds. */
  readonly time: number;
  readonly onset: number;
}

/**
 * One plucked note: the nearest of the rendered ones, bent to its pitch; the low-pass of its strength; the hand that ends
 * it. It is made of nodes of its own, and what holds from its beginning is set on them at once: Chromium takes no notice
 * of a lone value that is due at a time gone by, as the time of a tap is where the page is slow.
 */
class Note {
  private readonly source: AudioBufferSourceNode;
  private readonly hand: GainNode;

  constructor(
    private readonly context: Context,
    output: AudioNode,
    { buffer, rate, cutoff, level, time, onset }: Beginning,
    ended: () => void,
  ) {
    this.source = context.createBufferSource();
    this.source.buffer = buffer;
    this.source.playbackRate.value = rate;
    const filter = context.createBiquadFilter();
    filter.type = 'lowpass';
    filter.Q.value = -3; // dB: as flat as can be
    filter.frequency.value = cutoff;
    this.hand = context.createGain();
    this.hand.gain.value = onset > 0 ? 0 : level;
    if (onset > 0) this.hand.gain.setTargetAtTime(level, time, onset);
    this.source.connect(filter).connect(this.hand).connect(output);
    this.source.addEventListener('ended', () => {
      this.hand.disconnect();
      ended();
    });
    this.source.start(time);
  }

  /** Ends it, from `time` on. */
  damp(time: number, constant: number): void {
    this.hand.gain.setTargetAtTime(0, time, constant);
    this.source.stop(time + 10 * constant);
  }

  /** Ends it now, or before it has begun. */
  silence(): void {
    const now = this.context.immediate();
    this.hand.gain.cancelScheduledValues(now);
    this.damp(now, CUT);
  }
}

/** All that can be plucked. */
export class Strings {
  private readonly rendered = new Map<number, AudioBuffer>();
  /** The last note of each string, and all that sound or are to. */
  private readonly last = new Map<number, Note>();
  private readonly notes = new Set<Note>();

  constructor(
    private readonly context: Context,
    private readonly output: AudioNode,
  ) {}

  /** Takes in a rendered note. */
  add({ midi, samples }: Rendered): void {
    const buffer = new AudioBuffer({ length: samples.length, sampleRate: RENDERED_RATE });
    buffer.copyToChannel(samples, 0);
    this.rendered.set(midi, buffer);
  }

  /** Bytes that the rendered notes hold. */
  get bytes(): number {
    return [...this.rendered.values()].reduce((sum, { length }) => sum + 4 * length, 0);
  }

  /**
   * Plucks a string; what sounded on it ends.
   *
   * @param time of the context, in seconds; at once where it has just gone by
   * @param reference A4 in Hz
   */
  pluck(
    { midi, string, strength, articulation }: Omit<Pluck, 'at'>,
    time: number,
    reference: number,
  ): void {
    this.last.get(string)?.damp(time, CUT);
    const attack = ATTACKS[articulation ?? 'pluck'];
    const hertz = frequency(midi, reference);
    const rendered = this.nearest(midi);
    const beginning: Beginning = {
      buffer: this.rendered.get(rendered)!,
      rate: hertz / frequency(rendered),
      cutoff: brightnessOf(strength, attack.brightness, hertz),
      level: strength * attack.strength,
      time,
      onset: attack.onset,
    };
    const note = new Note(this.context, this.output, beginning, () => this.notes.delete(note));
    this.notes.add(note);
    this.last.set(string, note);
  }

  /** Lays the hand on a string. */
  damp(string: number, time: number): void {
    this.last.get(string)?.damp(time, HAND);
  }

  /** Ends everything, what is still to come as well. */
  silence(): void {
    for (const note of this.notes) note.silence();
  }

  /** The nearest of the rendered notes that are there. */
  private nearest(midi: number): number {
    const apart = (rendered: number) => Math.abs(rendered - midi);
    return [...this.rendered.keys()].reduce((a, b) => (apart(b) < apart(a) ? b : a));
  }
}
