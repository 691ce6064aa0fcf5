/**
 * An ear that knows nothing of the app: it records what comes out of the page, and tells pitches by pitchy (McLeod's
 * method) and a key by teoria's chords. When a note begins is when a source is started in the page.
 */
import type { Page } from '@playwright/test';
import { createRequire } from 'node:module';
import { PitchDetector } from 'pitchy';

/** One note, or several that begin within a strum, as they came out of the page. */
interface Heard {
  /** Seconds since the page began to sound. */
  readonly at: number;
  readonly samples: Float32Array;
}

interface Recorded {
  rate: number;
  /** When sources were started, seconds. */
  starts: number[];
  blocks: { at: number; samples: number[] }[];
}

/** Records all that the page sounds from now on. To be called before it is opened. */
export async function recording(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const recorded: Recorded = { rate: 0, starts: [], blocks: [] };
    Object.assign(globalThis, { recorded });
    type Connect = (this: AudioNode, to: AudioNode, ...more: number[]) => AudioNode;
    const connect = AudioNode.prototype.connect as Connect;
    const tapped = new WeakMap<BaseAudioContext, ScriptProcessorNode>();
    const listenerOf = (context: AudioContext) => {
      let listener = tapped.get(context);
      if (!listener) {
        // A worklet's module would be against the page's content policy.
        listener = context.createScriptProcessor(4096, 1, 1);
        listener.addEventListener('audioprocess', ({ playbackTime, inputBuffer }) => {
          const samples = [...inputBuffer.getChannelData(0)];
          recorded.blocks.push({ at: playbackTime, samples });
        });
        recorded.rate = context.sampleRate;
        tapped.set(context, listener);
        connect.call(listener, context.destination);
      }
      return listener;
    };
    AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...more: number[]) {
      if (to instanceof AudioDestinationNode)
        connect.call(this, listenerOf(to.context as AudioContext));
      return connect.call(this, to, ...more);
    } as typeof AudioNode.prototype.connect;
    const { start } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (when = 0, ...more) {
      recorded.starts.push(Math.max(when, this.context.currentTime));
      start.call(this, when, ...more);
    };
  });
}

const STRUM = 0.09;

/** Waits until nothing has begun for so long, and gives what was heard since the last time, beginning by beginning. */
export async function heard(page: Page, quiet = 2500): Promise<Heard[]> {
  await page.waitForFunction(
    (ms) => {
      const { recorded, waited } = globalThis as unknown as {
        recorded: Recorded;
        waited?: { starts: number; since: number };
      };
      const starts = recorded.starts.length;
      if (starts === 0 || waited?.starts !== starts) {
        Object.assign(globalThis, { waited: { starts, since: performance.now() } });
        return false;
      }
      return performance.now() - waited.since > ms;
    },
    quiet,
    { polling: 100, timeout: 45_000 },
  );
  const { rate, starts, blocks } = await page.evaluate(() => {
    const { recorded } = globalThis as unknown as { recorded: Recorded };
    const { rate: of, starts: begun, blocks: all } = recorded;
    Object.assign(globalThis, {
      recorded: Object.assign(recorded, { starts: [], blocks: [] }),
      waited: undefined,
    });
    return { rate: of, starts: begun, blocks: all };
  });
  const from = blocks[0]!.at;
  const samples = Float32Array.from(blocks.flatMap((block) => block.samples));
  const onsets = starts
    .toSorted((a, b) => a - b)
    .filter((at, i, all) => i === 0 || at - all[i - 1]! > STRUM);
  return onsets.map((at, i) => {
    const to = onsets[i + 1] ?? at + 1;
    const index = (time: number) => Math.max(0, Math.round((time - from) * rate));
    return { at, samples: samples.slice(index(at), index(to)) };
  });
}

const RATE = 44_100;
/** Behind the pluck's noise. */
const SETTLED = 0.05;

/** The MIDI number of a single note, by its fundamental. */
export function pitchOf({ samples }: Heard, rate = RATE): number {
  const skipped = samples.subarray(Math.round(SETTLED * rate));
  const size = Math.min(4096, skipped.length);
  const [hertz] = PitchDetector.forFloat32Array(size).findPitch(skipped.subarray(0, size), rate);
  return Math.round(69 + 12 * Math.log2(hertz / 440));
}

interface Chord {
  notes(): { chroma(): number }[];
}

const teoria = createRequire(import.meta.url)('teoria') as { chord(symbol: string): Chord };

const TONICS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
/** What the trade plays to make a key heard, in C: I IV V I, and i iv V i. */
const CADENCES = { major: ['C', 'F', 'G', 'C'], minor: ['Cm', 'Fm', 'G', 'Cm'] };

/** How much of a sound lies at each pitch class, by the four lowest octaves' fundamentals (Goertzel). */
function classesIn({ samples }: Heard, rate = RATE): number[] {
  const piece = samples.subarray(0, Math.round(0.55 * rate));
  return Array.from({ length: 12 }, (_, chroma) =>
    [3, 4, 5].reduce((sum, octave) => {
      const hertz = 440 * 2 ** ((12 * (octave + 1) + chroma - 69) / 12);
      return sum + Math.sqrt(power(piece, hertz / rate));
    }, 0),
  );
}

function power(samples: Float32Array, turns: number): number {
  const cosine = 2 * Math.cos(2 * Math.PI * turns);
  let [before, last] = [0, 0];
  samples.forEach((sample, n) => {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / samples.length);
    [before, last] = [last, window * sample + cosine * last - before];
  });
  return last ** 2 + before ** 2 - cosine * last * before;
}

/** The key whose cadence four chords are: of 24, that whose chords have most of what sounds. */
export function keyOf(chords: readonly Heard[]): string {
  const sounds = chords.map((chord) => classesIn(chord));
  const scored = TONICS.flatMap((tonic, up) =>
    (['major', 'minor'] as const).map((scale) => {
      const score = CADENCES[scale].reduce((sum, symbol, i) => {
        const total = sounds[i]!.reduce((a, b) => a + b, 0);
        const inChord = teoria
          .chord(symbol)
          .notes()
          .reduce((some, note) => some + sounds[i]![(note.chroma() + up) % 12]!, 0);
        return sum + inChord / total;
      }, 0);
      return { key: `${tonic} ${scale}`, score };
    }),
  );
  return scored.reduce((best, one) => (one.score > best.score ? one : best)).key;
}
