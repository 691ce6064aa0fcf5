/** Phrases as they are asked, as they are played, and the sound of that: with known truth. */
import { renderClick } from '../../../src/sound/click.ts';
import { RATE, resampled, type Clip, type Guitar } from './bank.ts';

export type Chance = () => number;

/** Numbers from 0 to 1, the same for the same seed (Mulberry32). */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const between = (chance: Chance, low: number, high: number) => low + (high - low) * chance();
const whole = (chance: Chance, low: number, high: number) =>
  Math.floor(between(chance, low, high + 1));
const normal = (chance: Chance) =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

export type Mistake = 'semitone' | 'octave' | 'other' | 'skipped' | 'extra' | 'again';
const MISTAKES: readonly Mistake[] = ['semitone', 'octave', 'other', 'skipped', 'extra', 'again'];

/** A pluck as it happens. */
export interface Pluck {
  readonly midi: number;
  readonly string: number;
  /** Seconds from the beginning of the piece. */
  readonly time: number;
  /** Which expected note it answers, or −1: extra, again, before a restart. */
  readonly answers: number;
  readonly mistake: Mistake | null;
}

export interface Conditions {
  readonly tempo?: number;
  readonly ringing: 'damped' | 'strings' | 'all';
  /** What is played; arpeggios of a key where left out. */
  readonly line?: 'stepwise' | 'leaping' | 'mixed';
  /** How many notes; 10 to 16 where left out. */
  readonly length?: number;
  /** Free tempo: steps of .15 to 1.2 s. */
  readonly free?: boolean;
  readonly restarts?: boolean;
  readonly mistakes?: number;
  readonly noise?: number;
  readonly phone?: boolean;
  readonly room?: number;
  readonly click?: boolean;
  readonly thumps?: boolean;
  readonly clipping?: boolean;
  readonly gain?: boolean;
  /** Simulated pick position, body and tuning laid over the recorded guitars. */
  readonly varied?: boolean;
}

export interface Piece {
  readonly expected: readonly number[];
  readonly plucks: readonly Pluck[];
  readonly samples: Float32Array;
  readonly offset: number;
}

const OPEN = [64, 59, 55, 50, 45, 40];
const MAJOR = [0, 2, 4, 5, 7, 9, 11];
/** Seconds of silence before the first note can come. */
export const SILENCE = 0.8;

/** The notes of a key in one position, rising, on strings. */
function positionOf(chance: Chance): { midi: number; string: number }[] {
  const position = whole(chance, 0, 8);
  const tonic = whole(chance, 0, 11);
  const inKey = OPEN.flatMap((open, string) =>
    [0, 1, 2, 3, 4].map((fret) => ({ midi: open + position + fret, string })),
  ).filter(({ midi }) => MAJOR.includes((((midi - tonic) % 12) + 12) % 12));
  return inKey
    .toSorted((a, b) => a.midi - b.midi || b.string - a.string)
    .filter((note, i, all) => i === 0 || all[i - 1]!.midi !== note.midi);
}

/** How often an improvisation leaps, and turns round. */
const LEAPS = { stepwise: 0.08, leaping: 0.7, mixed: 0.35 };
const TURNS = 0.25;

/** A walk through a key in one position, by step and by leaps of two to six steps of it. */
function improvised(chance: Chance, length: number, kind: keyof typeof LEAPS) {
  const byPitch = positionOf(chance);
  let [at, way] = [whole(chance, 0, byPitch.length - 1), 1];
  return Array.from({ length }, () => {
    const by = chance() < LEAPS[kind] ? whole(chance, 2, 6) : 1;
    if (chance() < TURNS || byPitch[at + way * by] === undefined) way = -way;
    if (byPitch[at + way * by] === undefined) way = -way;
    at = Math.min(byPitch.length - 1, Math.max(0, at + way * by));
    return byPitch[at]!;
  });
}

/** Arpeggios of a key in one position, up, down and mixed, as notes on strings. */
function lineOf(chance: Chance, length: number): { midi: number; string: number }[] {
  const byPitch = positionOf(chance);
  const out: { midi: number; string: number }[] = [];
  while (out.length < length) {
    const size = whole(chance, 3, 4);
    const low = whole(chance, 0, byPitch.length - 1 - 2 * (size - 1));
    const group = Array.from({ length: size }, (_, i) => byPitch[low + 2 * i]!);
    const way = chance();
    if (way < 0.4) out.push(...group.toReversed());
    else if (way < 0.8) out.push(...group);
    else out.push(...group.toSorted(() => chance() - 0.5));
  }
  return out.slice(0, length);
}

const onString = (midi: number, near: number): number => {
  const fits = OPEN.map((open, string) => ({ open, string })).filter(
    ({ open }) => midi >= open && midi - open <= 14,
  );
  return (
    fits.toSorted((a, b) => Math.abs(a.string - near) - Math.abs(b.string - near))[0]?.string ??
    near
  );
};

function mistaken(chance: Chance, midi: number, mistake: Mistake): number {
  const sign = chance() < 0.5 ? -1 : 1;
  const by = mistake === 'semitone' ? 1 : mistake === 'octave' ? 12 : whole(chance, 2, 5);
  const other = midi + sign * by;
  return other < 40 || other > 79 ? midi - sign * by : other;
}

function steps(chance: Chance, conditions: Conditions): () => number {
  if (conditions.free) return () => 0.15 * 8 ** chance();
  const step = 60 / conditions.tempo! / 3;
  const late = { was: 0 };
  return () => {
    const jitter = 0.04 * step * normal(chance);
    const out = step + jitter - late.was;
    late.was = jitter;
    return Math.max(0.6 * step, out);
  };
}

function played(
  chance: Chance,
  notes: readonly { midi: number; string: number }[],
  conditions: Conditions,
): Pluck[] {
  const step = steps(chance, conditions);
  const rate = conditions.mistakes ?? 0.2;
  let time = SILENCE + (conditions.restarts ? between(chance, 0, 2) : 0.1);
  const out: Pluck[] = [];
  if (conditions.restarts && chance() < 0.7) {
    const upTo = whole(chance, 1, Math.min(8, notes.length - 2));
    for (const { midi, string } of notes.slice(0, upTo)) {
      out.push({ midi, string, time, answers: -1, mistake: null });
      time += step();
    }
    time += between(chance, 0.3, 2);
  }
  notes.forEach(({ midi, string }, answers) => {
    const mistake = chance() < rate ? MISTAKES[whole(chance, 0, MISTAKES.length - 1)]! : null;
    if (mistake === 'skipped') return;
    const replaced = mistake === 'semitone' || mistake === 'octave' || mistake === 'other';
    const actual = replaced ? mistaken(chance, midi, mistake) : midi;
    out.push({
      midi: actual,
      string: onString(actual, string),
      time,
      answers,
      mistake: replaced ? mistake : null,
    });
    time += step();
    if (mistake === 'extra' || mistake === 'again') {
      const more = mistake === 'again' ? midi : mistaken(chance, midi, 'other');
      out.push({ midi: more, string: onString(more, string), time, answers: -1, mistake });
      time += step();
    }
    if (conditions.restarts && chance() < 0.05) time += between(chance, 0.5, 2);
  });
  return out;
}

/** Adds a clip, faded out before `until` (samples), at a gain. */
function addClip(
  out: Float32Array,
  clip: Float32Array,
  start: number,
  until: number,
  gain: number,
  fade: number,
): void {
  const end = Math.min(out.length, start + clip.length, until);
  for (let n = Math.max(0, start); n < end; n++) {
    const left = until - n;
    out[n]! +=
      clip[n - start]! * gain * (left < fade ? 0.5 - 0.5 * Math.cos((Math.PI * left) / fade) : 1);
  }
}

/** The sound of plucks on a guitar, dry. */
function sounding(
  chance: Chance,
  guitar: Guitar,
  plucks: readonly Pluck[],
  conditions: Conditions,
  cents: number,
): Float32Array {
  const out = new Float32Array(Math.round((plucks.at(-1)!.time + 1.6) * RATE));
  plucks.forEach((pluck, i) => {
    const clips = nearest(guitar, pluck.midi);
    const clip = clips[whole(chance, 0, clips.length - 1)]!;
    const wanted = conditions.varied ? cents + 4 * normal(chance) : clip.cents;
    const bend = pluck.midi - clip.midi + (wanted - clip.cents) / 100;
    const speed = 2 ** (bend / 12);
    const samples = resampled(clip.samples, speed);
    const start = Math.round(pluck.time * RATE - clip.onset / speed);
    const next = plucks
      .slice(i + 1)
      .find(
        (later) =>
          conditions.ringing === 'damped' ||
          (conditions.ringing === 'strings' && later.string === pluck.string) ||
          (conditions.ringing === 'all' && later.midi === pluck.midi),
      );
    const early =
      conditions.ringing === 'damped' ? between(chance, 0, 0.03) : between(chance, 0.002, 0.015);
    const until = next ? Math.round((next.time - early) * RATE) + 300 : Infinity;
    const gain = 10 ** (between(chance, -5, 4) / 20);
    addClip(out, samples, start, until, gain, 500);
  });
  return out;
}

function nearest(guitar: Guitar, midi: number): readonly Clip[] {
  for (const by of [0, 1, -1, 2, -2, -3, -4, -5]) {
    const clips = guitar.clips.get(midi + by);
    if (clips) return clips;
  }
  throw new Error(`${guitar.name} has nothing near ${midi}`);
}

/** A two-pole peak (Zölzer, DAFX), in place. */
function peaking(samples: Float32Array, hertz: number, q: number, decibels: number): void {
  const a = 10 ** (decibels / 40);
  const w = (2 * Math.PI * hertz) / RATE;
  const alpha = Math.sin(w) / (2 * q);
  filter(
    samples,
    [1 + alpha * a, -2 * Math.cos(w), 1 - alpha * a],
    [1 + alpha / a, -2 * Math.cos(w), 1 - alpha / a],
  );
}

function highPass(samples: Float32Array, hertz: number): void {
  const w = (2 * Math.PI * hertz) / RATE;
  const alpha = Math.sin(w) / Math.SQRT2;
  const c = Math.cos(w);
  filter(samples, [(1 + c) / 2, -1 - c, (1 + c) / 2], [1 + alpha, -2 * c, 1 - alpha]);
}

function filter(samples: Float32Array, b: readonly number[], a: readonly number[]): void {
  const [b0, b1, b2, a1, a2] = [
    b[0]! / a[0]!,
    b[1]! / a[0]!,
    b[2]! / a[0]!,
    a[1]! / a[0]!,
    a[2]! / a[0]!,
  ];
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    samples[n] = y;
  }
}

/** Plucked elsewhere on the string, and another body. */
function vary(chance: Chance, samples: Float32Array): void {
  const delay = Math.round(RATE * between(chance, 0.0003, 0.002));
  const depth = between(chance, 0, 0.6);
  for (let n = samples.length - 1; n >= delay; n--) samples[n]! -= depth * samples[n - delay]!;
  for (let i = 0; i < 3; i++) {
    peaking(samples, 90 * 30 ** chance(), between(chance, 0.7, 4), between(chance, -8, 8));
  }
}

/** A feedback delay network of eight lines (Jot & Chaigne 1991), a little low-passed, beside the direct sound. */
function room(chance: Chance, samples: Float32Array, seconds: number): void {
  const lengths = Array.from({ length: 8 }, () => whole(chance, 600, 2600));
  const lines = lengths.map((length) => new Float32Array(length));
  const gains = lengths.map((length) => 10 ** ((-3 * length) / RATE / seconds));
  const lows = new Float64Array(8);
  const outs = new Float64Array(8);
  const at = new Int32Array(8);
  const wet = 0.55;
  for (let n = 0; n < samples.length; n++) {
    let sum = 0;
    for (let i = 0; i < 8; i++) sum += outs[i] = lines[i]![at[i]!]!;
    const input = samples[n]!;
    for (let i = 0; i < 8; i++) {
      const back = gains[i]! * (outs[i]! - sum / 4);
      lows[i]! += 0.6 * (back - lows[i]!);
      lines[i]![at[i]!] = lows[i]! + (i % 2 ? -input : input) * 0.35;
      at[i] = at[i]! + 1 === lengths[i] ? 0 : at[i]! + 1;
    }
    samples[n] = input + wet * sum;
  }
}

function addPink(chance: Chance, samples: Float32Array, decibels: number, level: number): void {
  let [b0, b1, b2] = [0, 0, 0];
  const noise = samples.map(() => {
    const white = 2 * chance() - 1;
    // Kellet's three-pole approximation.
    b0 = 0.99765 * b0 + white * 0.099046;
    b1 = 0.963 * b1 + white * 0.2965164;
    b2 = 0.57 * b2 + white * 1.0526913;
    return b0 + b1 + b2 + white * 0.1848;
  });
  const gain = (level * 10 ** (-decibels / 20)) / rms(noise, 0);
  for (let n = 0; n < samples.length; n++) samples[n]! += gain * noise[n]!;
}

function rms(samples: Float32Array, from: number): number {
  let sum = 0;
  for (let n = from; n < samples.length; n++) sum += samples[n]! ** 2;
  return Math.sqrt(sum / (samples.length - from));
}

function addClicks(samples: Float32Array, conditions: Conditions, level: number): void {
  const click = renderClick(RATE);
  const step = 60 / (conditions.tempo ?? 100);
  for (let time = 0.9; time * RATE < samples.length - 600; time += step) {
    const start = Math.round(time * RATE);
    click.forEach((value, n) => (samples[start + n]! += 1.5 * level * value));
  }
}

/** Knocks on the body: noise of 30 ms through a resonance at 120 Hz, quieter than notes. */
function addThumps(chance: Chance, samples: Float32Array, level: number): void {
  const out = new Float32Array(samples.length);
  for (let time = 1.1; time * RATE < samples.length - 4000; time += between(chance, 0.4, 2)) {
    const start = Math.round(time * RATE);
    for (let n = 0; n < 2000; n++) out[start + n]! += (2 * chance() - 1) * Math.exp(-n / 300);
  }
  peaking(out, 120, 3, 20);
  highPass(out, 60);
  const gain = level / (1e-9 + Math.max(...sample(out)));
  for (let n = 0; n < samples.length; n++) samples[n]! += gain * out[n]!;
}
const sample = (x: Float32Array) => x.filter((_, i) => i % 7 === 0);

/** One piece: what is asked, what is played, how it sounds. */
export function makePiece(guitar: Guitar, conditions: Conditions, seed: number): Piece {
  const chance = chanceFrom(seed);
  const length = conditions.length ?? whole(chance, 10, 16);
  const { line } = conditions;
  const notes = line ? improvised(chance, length, line) : lineOf(chance, length);
  const plucks = played(chance, notes, conditions);
  const offset = conditions.varied ? between(chance, -12, 12) : 0;
  const samples = sounding(chance, guitar, plucks, conditions, offset);
  const level = rms(samples, Math.round(SILENCE * RATE));
  if (conditions.varied) vary(chance, samples);
  if (conditions.thumps) addThumps(chance, samples, 1.5 * level);
  if (conditions.click) addClicks(samples, conditions, level);
  if (conditions.room) room(chance, samples, conditions.room);
  if (conditions.gain)
    samples.forEach(
      (value, n) => (samples[n] = value * 10 ** ((8 * Math.sin(n / RATE / 1.3)) / 20)),
    );
  if (conditions.phone) highPass(samples, 150);
  if (conditions.noise !== undefined)
    addPink(chance, samples, conditions.noise, rms(samples, Math.round(SILENCE * RATE)));
  // A microphone is never quite silent.
  for (let n = 0; n < samples.length; n++) samples[n]! += 2e-5 * (2 * chance() - 1);
  if (conditions.clipping) {
    const most = 2.2 * level;
    for (let n = 0; n < samples.length; n++)
      samples[n] = Math.max(-most, Math.min(most, samples[n]!));
  }
  return { expected: notes.map(({ midi }) => midi), plucks, samples, offset };
}
