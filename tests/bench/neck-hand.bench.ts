import { bench, describe } from 'vitest';
import { fingering, type LineNote } from '../../src/neck/fingering.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { beats } from '../../src/theory/rhythm.ts';

/** A line that leaps over two octaves and a half in even triplets, on six strings and 24 frets. */
const line = (notes: number): LineNote[] =>
  Array.from({ length: notes }, (_, i) => ({
    midi: 46 + ((i * 7) % 29),
    at: beats(i, 3),
    length: beats(1, 3),
  }));

const LENGTHS = [8, 64, 512];

const neck = { ...GUITAR, frets: 24 };

describe('the optimum path', () => {
  for (const notes of LENGTHS) {
    const phrase = line(notes);
    bench(`${notes} notes`, () => {
      fingering(neck, phrase);
    });
  }
});

/** The least processor time of several runs, in ms: what else the machine does counts less than on the clock. */
function processorTime(run: () => void): number {
  const times = Array.from({ length: 12 }, () => {
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return Math.min(...times);
}

const times = LENGTHS.map((notes) => {
  const phrase = line(notes);
  return { notes, ms: processorTime(() => fingering(neck, phrase)) };
});
for (const [i, { notes, ms }] of times.entries()) {
  const before = times[i - 1];
  const growth = before
    ? `, ${(ms / before.ms).toFixed(1)} times that of ${before.notes} (linear: ${notes / before.notes})`
    : '';
  console.info(`optimum path, ${notes} notes: ${ms.toFixed(2)} ms of processor time${growth}`);
}
