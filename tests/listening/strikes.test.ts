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
