import type { Context } from 'tone/build/esm/core/context/Context.js';
import type { MidiNote } from 'tone/build/esm/core/type/Units.js';
import { Sampler } from 'tone/build/esm/instrument/Sampler.js';
import { frequency } from '../theory/note.ts';
import type { Pluck } from './plan.ts';
import type { Sound } from './sounding.ts';
import type { Rendered } from './render.ts';
import { RENDERED_RATE } from './string.ts';

/** How a note begins: the part of its strength that is left, how bright it is, how softly it sets in (seconds). */
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

/** One thing that can sound: a sampler, the low-pass of its strength, the hand that lies on it. */
class Voice {
  private readonly sampler: Sampler;
  private readonly filter: BiquadFilterNode;
  private readonly hand: GainNode;

  constructor(
    private readonly context: Context,
    output: AudioNode,
    buffers: ReadonlyMap<number, AudioBuffer>,
  ) {
    this.filter = context.createBiquadFilter();
    this.filter.type = 'lowpass';
    this.filter.Q.value = -3; // dB: as flat as can be
    this.hand = context.createGain();
    this.sampler = new Sampler({ context, curve: 'linear' });
    for (const [midi, buffer] of buffers) this.sampler.add(midi as MidiNote, buffer);
    this.sampler.connect(this.filter);
    this.filter.connect(this.hand).connect(output);
  }

  add(midi: number, buffer: AudioBuffer): void {
    this.sampler.add(midi as MidiNote, buffer);
  }

  pluck(hertz: number, strength: number, time: number, join?: Sound['join']): void {
    const attack = ATTACKS[join ?? 'pluck'];
    const gain = this.hand.gain;
    gain.setValueAtTime(attack.onset > 0 ? 0 : 1, time);
    if (attack.onset > 0) gain.setTargetAtTime(1, time, attack.onset);
    this.filter.frequency.setValueAtTime(brightnessOf(strength, attack.brightness, hertz), time);
    this.sampler.triggerAttack(hertz, time, strength * attack.strength);
  }

  /** Ends what sounds, from `time` on. */
  damp(time: number, constant: number): void {
    this.hand.gain.setTargetAtTime(0, time, constant);
    this.sampler.releaseAll(time + 10 * constant);
  }

  /** Ends what sounds and takes back what was to come. */
  silence(): void {
    const now = this.context.immediate();
    this.hand.gain.cancelScheduledValues(now);
    this.damp(now, CUT);
  }
}

/**
 * All that can be plucked. Each string has two voices that take turns, so that an old note can end by itself while the
 * new one begins.
 */
export class Strings {
  private readonly buffers = new Map<number, AudioBuffer>();
  private readonly pairs = new Map<number, [sounding: Voice, resting: Voice]>();

  constructor(
    private readonly context: Context,
    private readonly output: AudioNode,
  ) {}

  /** Takes in a rendered note. */
  add({ midi, samples }: Rendered): void {
    const buffer = new AudioBuffer({ length: samples.length, sampleRate: RENDERED_RATE });
    buffer.copyToChannel(samples, 0);
    this.buffers.set(midi, buffer);
    for (const pair of this.pairs.values()) for (const voice of pair) voice.add(midi, buffer);
  }

  /** Bytes that the rendered notes hold. */
  get bytes(): number {
    return [...this.buffers.values()].reduce((sum, { length }) => sum + 4 * length, 0);
  }

  /**
   * Plucks a string; what sounded on it ends.
   *
   * @param time of the context, in seconds
   * @param reference A4 in Hz
   */
  pluck(
    { midi, string, strength, join }: Omit<Pluck, 'at'>,
    time: number,
    reference: number,
  ): void {
    const pair = this.pairs.get(string) ?? [this.voice(), this.voice()];
    pair[0].damp(time, CUT);
    pair.reverse();
    this.pairs.set(string, pair);
    pair[0].pluck(frequency(midi, reference), strength, time, join);
  }

  /** Lays the hand on a string. */
  damp(string: number, time: number): void {
    this.pairs.get(string)?.[0].damp(time, HAND);
  }

  /** Ends everything, what is still to come as well. */
  silence(): void {
    for (const pair of this.pairs.values()) for (const voice of pair) voice.silence();
  }

  private voice(): Voice {
    return new Voice(this.context, this.output, this.buffers);
  }
}
