/** Phrases played on the app's own string: made on the spot, so that nothing has to be at hand. */
import { renderString } from '../../src/sound/string.ts';

export const RATE = 44100;

/** A note as it is plucked: when (seconds), how loud, when it is damped. */
export interface Played {
  readonly midi: number;
  readonly time: number;
  readonly level?: number;
  readonly until?: number;
}

const rendered = new Map<string, Float32Array>();

function noteOf(midi: number, rate: number): Float32Array {
  const key = `${midi} ${rate}`;
  if (!rendered.has(key)) rendered.set(key, renderString(midi, rate));
  return rendered.get(key)!;
}

/** A note so many cents off, by playing it faster. */
function bent(samples: Float32Array, cents: number): Float32Array {
  const speed = 2 ** (cents / 1200);
  return Float32Array.from({ length: Math.floor((samples.length - 2) / speed) }, (_, n) => {
    const at = Math.floor(n * speed);
    const part = n * speed - at;
    return samples[at]! * (1 - part) + samples[at + 1]! * part;
  });
}

/** What a microphone hears of these notes in a quiet room: `seconds` long, with a little noise (seeded). */
export function recordingOf(
  notes: readonly Played[],
  seconds: number,
  { rate = RATE, cents = 0, noise = 1e-4 } = {},
): Float32Array {
  let seed = 1;
  const out = Float32Array.from({ length: Math.round(seconds * rate) }, () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return noise * (seed / 2 ** 31 - 1);
  });
  for (const { midi, time, level = 1, until = Infinity } of notes) {
    const samples = cents === 0 ? noteOf(midi, rate) : bent(noteOf(midi, rate), cents);
    const start = Math.round(time * rate);
    const end = Math.min(out.length, start + samples.length, until * rate);
    for (let n = start; n < end; n++) {
      const left = (until * rate - n) / (0.01 * rate);
      out[n]! += level * Math.min(1, left) * samples[n - start]!;
    }
  }
  return out;
}

/** Notes in even steps from `start` on, ringing on. */
export const inSteps = (midis: readonly number[], start: number, step: number): Played[] =>
  midis.map((midi, i) => ({ midi, time: start + i * step }));

/** One channel of 16 bits, as a WAV file (IBM & Microsoft 1991). */
export function wavOf(samples: Float32Array, rate = RATE): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(44 + 2 * samples.length));
  const text = (at: number, letters: string) =>
    [...letters].forEach((letter, i) => bytes.setUint8(at + i, letter.charCodeAt(0)));
  text(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * samples.length, true);
  text(8, 'WAVEfmt ');
  bytes.setUint32(16, 16, true);
  bytes.setUint16(20, 1, true);
  bytes.setUint16(22, 1, true);
  bytes.setUint32(24, rate, true);
  bytes.setUint32(28, 2 * rate, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  text(36, 'data');
  bytes.setUint32(40, 2 * samples.length, true);
  samples.forEach((value, n) =>
    bytes.setInt16(44 + 2 * n, Math.max(-1, Math.min(1, value)) * 32767, true),
  );
  return new Uint8Array(bytes.buffer);
}
