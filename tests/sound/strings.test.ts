/** What a pluck makes of a rendered string: its pitch, how loud and bright it is, how it sets in and how it ends. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { Strings } from '../../src/sound/strings.ts';

interface Target {
  readonly value: number;
  readonly time: number;
  readonly constant: number;
}

/** What became of one note, in the nodes that it is made of. */
interface Made {
  rate: number;
  cutoff: number;
  level: number;
  start: number;
  stop: number;
  readonly targets: Target[];
}

let made: Made[] = [];

/** As much of an audio context as a note needs; its clock stands at 5 s. */
function contextOf() {
  let now: Made;
  const param = (set: (value: number) => void) => ({
    set value(value: number) {
      set(value);
    },
    setTargetAtTime: (value: number, time: number, constant: number) =>
      now.targets.push({ value, time, constant }),
    cancelScheduledValues() {},
  });
  return {
    immediate: () => 5,
    createBufferSource() {
      const own: Made = { rate: 0, cutoff: 0, level: 0, start: 0, stop: 0, targets: [] };
      made.push((now = own));
      return {
        playbackRate: param((value) => (own.rate = value)),
        connect: (to: unknown) => to,
        addEventListener() {},
        start: (time: number) => (own.start = time),
        stop: (time: number) => (own.stop = time),
      };
    },
    createBiquadFilter: () => ({
      Q: param(() => {}),
      frequency: param((value) => (now.cutoff = value)),
      connect: (to: unknown) => to,
    }),
    createGain() {
      const own = now;
      return {
        gain: {
          ...param(() => {}),
          set value(value: number) {
            own.level = value;
          },
          setTargetAtTime: (value: number, time: number, constant: number) =>
            own.targets.push({ value, time, constant }),
          cancelScheduledValues() {},
        },
        connect: (to: unknown) => to,
        disconnect() {},
      };
    },
  };
}

function strung(...rendered: number[]) {
  vi.stubGlobal(
    'AudioBuffer',
    class {
      copyToChannel() {}
    },
  );
  const strings = new Strings(contextOf() as never, {} as never);
  for (const midi of rendered) strings.add({ midi, samples: new Float32Array(4) });
  vi.unstubAllGlobals();
  return strings;
}

const NOTE = { midi: 60, string: 3, strength: 1 };
const cents = (rate: number) => 1200 * Math.log2(rate);

beforeEach(() => {
  made = [];
});

describe('a plucked string', () => {
  // The nearest of what is rendered is bent by so many cents; A = 432 is 31.77 under A = 440.
  test.each([
    [60, 440, 0],
    [61, 440, 100],
    [58, 440, -200],
    [64, 440, 100],
    [62, 440, -100],
    [60, 432, -31.77],
    [61, 450, 138.91],
  ])('of MIDI %i at A = %i is bent by %f cents', (midi, reference, bent) => {
    strung(60, 63).pluck({ ...NOTE, midi }, 1, reference);
    expect(cents(made[0]!.rate)).toBeCloseTo(bent, 1);
  });

  test('is as loud as it is strong, begins when it is due, and the stronger the brighter', () => {
    const strings = strung(60);
    for (const strength of [1, 0.8, 0.36]) strings.pluck({ ...NOTE, strength }, 2, 440);
    expect(made.map(({ level }) => level)).toEqual([1, 0.8, 0.36]);
    expect(made.map(({ start }) => start)).toEqual([2, 2, 2]);
    // Five octaves above 300 Hz at full strength, four at .8.
    expect(made.map(({ cutoff }) => Math.round(cutoff))).toEqual([9600, 4800, 1045]);
  });

  test.each([
    ['slide', 0.7, 4320, 0.003],
    ['hammer-on', 0.65, 2400, 0.0015],
    ['pull-off', 0.7, 4800, 0.0005],
  ] as const)(
    'reached by a %s is softer, darker, and sets in softly',
    (articulation, level, cutoff, onset) => {
      strung(60).pluck({ ...NOTE, articulation }, 2, 440);
      expect(made[0]).toMatchObject({
        level: 0,
        targets: [{ value: level, time: 2, constant: onset }],
      });
      expect(made[0]!.cutoff).toBeCloseTo(cutoff, 6);
    },
  );

  test('is never duller than an octave above itself', () => {
    strung(88).pluck({ ...NOTE, midi: 88, strength: 0.1, articulation: 'hammer-on' }, 2, 440);
    // E6 is 1318.51 Hz.
    expect(made[0]!.cutoff).toBeCloseTo(2 * 1318.51, 1);
  });

  test('ends the note before it on its own string and no other', () => {
    const strings = strung(60);
    strings.pluck(NOTE, 1, 440);
    strings.pluck({ ...NOTE, string: 2 }, 2, 440);
    expect(made.map(({ targets }) => targets)).toEqual([[], []]);
    strings.pluck(NOTE, 3, 440);
    expect(made[0]!.targets).toEqual([{ value: 0, time: 3, constant: 0.0007 }]);
    expect(made[0]!.stop).toBeCloseTo(3.007, 6);
    expect(made.slice(1).map(({ targets }) => targets)).toEqual([[], []]);
  });

  test('is ended by the hand more softly, and all of them at once where it is to be silent', () => {
    const strings = strung(60);
    strings.pluck(NOTE, 1, 440);
    strings.pluck({ ...NOTE, string: 2 }, 1, 440);
    strings.damp(3, 2);
    expect(made[0]!.targets).toEqual([{ value: 0, time: 2, constant: 0.012 }]);
    expect(made[1]!.targets).toEqual([]);
    strings.silence();
    for (const { targets } of made)
      expect(targets.at(-1)).toEqual({ value: 0, time: 5, constant: 0.0007 });
  });
});
