/** Single notes of outside guitars, rendered or decoded once and kept under node_modules/.cache/listen. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ToneMidi from '@tonejs/midi';
import { PitchDetector } from 'pitchy';

export const RATE = 44100;
const CACHE = resolve('node_modules/.cache/listen');
const LOWEST = 40;
const HIGHEST = 81;
const VELOCITIES = [60, 85, 110];
/**
 * Seconds from one note to the next in a rendered bank, and how much of it is the note: what a note leaves behind when it
 * is let go must be over before the next one, or that would seem to begin early.
 */
const STEP = 4.5;
const HELD = 2.9;

/** One note, alone: `onset` is where its envelope first reaches a tenth of its first 60 ms' peak, in samples. */
export interface Clip {
  readonly midi: number;
  readonly cents: number;
  readonly samples: Float32Array;
  readonly onset: number;
}

/** A guitar: for each MIDI number its clips, softest first. */
export interface Guitar {
  readonly name: string;
  readonly clips: ReadonlyMap<number, readonly Clip[]>;
  /** Notes left out because they are not what they are named. */
  readonly dropped: number;
}

export interface Source {
  readonly name: string;
  readonly licence: string;
  readonly load: () => Guitar[];
}

const GM = ['nylon', 'steel', 'jazz', 'clean'];

const font = (name: string, files: readonly string[], licence: string): Source => ({
  name,
  licence,
  load() {
    const file = files.find((path) => existsSync(path));
    if (!file) throw new Error(`${name} was not found: apt-get install ${name} fluidsynth`);
    return GM.map((guitar, i) =>
      guitarOf(`${name}: ${guitar}`, cutting(rendered(file, `${name}-${guitar}`, 24 + i))),
    );
  },
});

const recorded = (guitar: string): Source => {
  const name = `tonejs-instrument-guitar-${guitar}-mp3`;
  return {
    name,
    licence: 'package MIT; provenance of the recordings not stated',
    load: () => [guitarOf(name, decoded(name))],
  };
};

export const TUNED_ON: readonly Source[] = [
  font(
    'fluid-soundfont-gm',
    ['/usr/share/sounds/sf2/FluidR3_GM.sf2', '/usr/share/soundfonts/FluidR3_GM.sf2'],
    'MIT',
  ),
  recorded('acoustic'),
];

export const REPORTED: readonly Source[] = [
  font('timgm6mb-soundfont', ['/usr/share/sounds/sf2/TimGM6mb.sf2'], 'GPL-2'),
  recorded('nylon'),
];

const slots = () =>
  Array.from({ length: HIGHEST - LOWEST + 1 }, (_, i) => LOWEST + i).flatMap((midi) =>
    VELOCITIES.map((velocity) => ({ midi, velocity })),
  );

/** A bank of one program as 16-bit samples, one channel. */
function rendered(file: string, name: string, program: number): Int16Array {
  mkdirSync(CACHE, { recursive: true });
  const raw = join(CACHE, `${name}-${STEP}.s16`);
  if (!existsSync(raw)) {
    const midi = new ToneMidi.Midi();
    const track = midi.addTrack();
    track.channel = 0;
    track.instrument.number = program;
    slots().forEach((slot, i) =>
      track.addNote({
        midi: slot.midi,
        time: 0.1 + i * STEP,
        duration: HELD,
        velocity: slot.velocity / 127,
      }),
    );
    writeFileSync(`${raw}.mid`, midi.toArray());
    execFileSync(
      'fluidsynth',
      [
        '-ni',
        '-q',
        '-R',
        '0',
        '-C',
        '0',
        '-g',
        '0.6',
        '-r',
        `${RATE}`,
        '-F',
        `${raw}.wav`,
        file,
        `${raw}.mid`,
      ],
      { stdio: 'ignore' },
    );
    toRaw(`${raw}.wav`, raw);
  }
  return int16(raw);
}

function toRaw(from: string, to: string): void {
  execFileSync('ffmpeg', [
    '-v',
    'error',
    '-y',
    '-i',
    from,
    '-ac',
    '1',
    '-ar',
    `${RATE}`,
    '-f',
    's16le',
    to,
  ]);
}

function int16(file: string): Int16Array {
  const bytes = readFileSync(file);
  return new Int16Array(bytes.buffer, bytes.byteOffset, bytes.length >> 1);
}

function floats(samples: Int16Array): Float32Array {
  const out = new Float32Array(samples.length);
  for (let n = 0; n < out.length; n++) out[n] = samples[n]! / 32768;
  return out;
}

function cutting(bank: Int16Array): { midi: number; samples: Float32Array }[] {
  return slots().map(({ midi }, i) => ({
    midi,
    samples: floats(
      bank.subarray(
        Math.round((0.09 + i * STEP) * RATE),
        Math.round((0.09 + i * STEP + HELD) * RATE),
      ),
    ),
  }));
}

const NAMES = ['C', 'Cs', 'D', 'Ds', 'E', 'F', 'Fs', 'G', 'Gs', 'A', 'As', 'B'];

/** The recorded notes of a package, found or fetched; notes between them are the nearest ones, resampled. */
function decoded(name: string): { midi: number; samples: Float32Array }[] {
  const folder = packageFolder(name);
  const notes = readdirSync(folder).flatMap((file) => {
    const match = /^([A-G]s?)(\d)\.mp3$/.exec(file);
    if (!match) return [];
    const raw = join(CACHE, `${name}-${file}.s16`);
    if (!existsSync(raw)) toRaw(join(folder, file), raw);
    return [
      { midi: NAMES.indexOf(match[1]!) + 12 * (Number(match[2]) + 1), samples: floats(int16(raw)) },
    ];
  });
  return Array.from({ length: HIGHEST - LOWEST + 1 }, (_, i) => LOWEST + i).flatMap((midi) => {
    const near = notes.toSorted((a, b) => Math.abs(a.midi - midi) - Math.abs(b.midi - midi))[0]!;
    if (Math.abs(near.midi - midi) > 2) return [];
    return [{ midi, samples: resampled(near.samples, 2 ** ((midi - near.midi) / 12)) }];
  });
}

function packageFolder(name: string): string {
  const found = [resolve('node_modules', name), join(CACHE, 'node_modules', name)].find((path) =>
    existsSync(path),
  );
  if (found) return found;
  mkdirSync(CACHE, { recursive: true });
  execFileSync(
    'npm',
    ['install', '--prefix', CACHE, '--no-save', '--legacy-peer-deps', '--ignore-scripts', name],
    { stdio: 'ignore' },
  );
  return join(CACHE, 'node_modules', name);
}

/** Played `speed` times as fast (cubic, Catmull–Rom). */
export function resampled(samples: Float32Array, speed: number): Float32Array {
  if (speed === 1) return samples;
  const out = new Float32Array(Math.floor((samples.length - 3) / speed));
  for (let n = 0; n < out.length; n++) {
    const where = n * speed;
    const i = Math.floor(where);
    const x = where - i;
    const [b, c, d] = [samples[i]!, samples[i + 1]!, samples[i + 2]!];
    const a = i > 0 ? samples[i - 1]! : b;
    out[n] = b + 0.5 * x * (c - a + x * (2 * a - 5 * b + 4 * c - d + x * (3 * (b - c) + d - a)));
  }
  return out;
}

/** Measures every note, and keeps those that are what they are named, within 35 cents. */
function guitarOf(name: string, notes: { midi: number; samples: Float32Array }[]): Guitar {
  const clips = new Map<number, Clip[]>();
  let dropped = 0;
  const known = measurements(name);
  const measured = (i: number, samples: Float32Array, midi: number) => {
    if (known[i]) return known[i];
    const onset = onsetOf(samples);
    return (known[i] = [onset, centsOff(samples, onset, midi)]);
  };
  for (const [i, { midi, samples }] of notes.entries()) {
    const [onset, cents] = measured(i, samples, midi);
    if (onset < 0 || !(Math.abs(cents) <= 35)) {
      dropped++;
      continue;
    }
    const cut = samples.subarray(Math.max(0, onset - 200));
    clips.set(midi, [
      ...(clips.get(midi) ?? []),
      { midi, cents, samples: normalised(cut), onset: Math.min(onset, 200) },
    ]);
  }
  writeFileSync(measurementsFile(name), JSON.stringify(known));
  return { name, clips, dropped };
}

const measurementsFile = (name: string) =>
  join(CACHE, `${name.replaceAll(/\W+/g, '-')}-${STEP}.json`);

/** Onset (samples) and cents off of each note of a guitar, as far as they were measured before. */
function measurements(name: string): [number, number][] {
  const file = measurementsFile(name);
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [];
}

function onsetOf(samples: Float32Array): number {
  let loudest = 0;
  for (const value of samples.subarray(0, RATE / 2)) loudest = Math.max(loudest, Math.abs(value));
  if (loudest < 1e-3) return -1;
  const begun = samples.findIndex((value) => Math.abs(value) > 0.02 * loudest);
  let peak = 0;
  for (let n = begun; n < begun + 0.06 * RATE; n++) peak = Math.max(peak, Math.abs(samples[n]!));
  return samples.findIndex((value) => Math.abs(value) > 0.1 * peak);
}

function normalised(samples: Float32Array): Float32Array {
  let sum = 0;
  const length = Math.min(samples.length, RATE * 0.3);
  for (let n = 0; n < length; n++) sum += samples[n]! ** 2;
  const gain = 0.1 / Math.sqrt(sum / length);
  return samples.map((value) => value * gain);
}

/** How far a note is from its name, by McLeod's method, octave errors included. */
function centsOff(samples: Float32Array, onset: number, midi: number): number {
  if (onset < 0) return Number.NaN;
  const detector = PitchDetector.forFloat32Array(4096);
  const cents = [0.08, 0.12, 0.16, 0.2, 0.24, 0.28].map((after) => {
    const start = onset + Math.round(after * RATE);
    const part = samples.subarray(start, start + 4096);
    if (part.length < 4096) return Number.NaN;
    const [hertz] = detector.findPitch(part, RATE);
    return 1200 * Math.log2(hertz / (440 * 2 ** ((midi - 69) / 12)));
  });
  return cents.toSorted((a, b) => a - b)[3]!;
}
