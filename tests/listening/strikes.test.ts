import { expect, it } from 'vitest';
import { StrikeEar } from '../../src/listening/strikes.ts';
import { RATE, recordingOf } from './played.ts';

// What sounds in the first tenth of a second may have begun before listening did.
it.each([0, 5])(
  'strokes are told from a tenth of a second after %i s on, when listening began',
  (start) => {
    const notes = [0.03, 0.5, 0.9].map((time) => ({ midi: 57, time, until: time + 0.3 }));
    const recording = recordingOf(notes, 1.3);
    const ear = new StrikeEar(RATE, new Float32Array(0), start);
    const struck: number[] = [];
    for (let from = 0; from < recording.length; from += 512)
      struck.push(...ear.hear(recording.subarray(from, from + 512)));
    struck.push(...ear.finish());
    expect(struck).toEqual([0.5, 0.9].map((time) => expect.closeTo(start + time, 1)));
  },
);

/** What is told of strokes at some times, each so loud. */
function struckAt(strokes: readonly (readonly [time: number, level: number])[]): number[] {
  const notes = strokes.map(([time, level]) => ({ midi: 57, time, level, until: time + 0.1 }));
  const ear = new StrikeEar(RATE);
  return [...ear.hear(recordingOf(notes, 1.6)), ...ear.finish()];
}

// Sixteenths at 120 are 125 ms apart; a hand is over six strings in less than 80.
it('strokes more than 80 ms apart are two, what is nearer is one', () => {
  const apart = (seconds: number) =>
    struckAt([
      [0.5, 1],
      [0.5 + seconds, 1],
      [1.2, 1],
    ]).length;
  expect([0.04, 0.06, 0.1, 0.125, 0.25].map(apart)).toEqual([2, 2, 3, 3, 3]);
});
