import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planOf, type Pluck } from '../../src/sound/plan.ts';
import type { Sound } from '../../src/sound/sounding.ts';

/** A line in even triplets on one string. */
const triplets = (count: number, more: Partial<Sound> = {}): Sound[] =>
  Array.from({ length: count }, (_, i) => ({
    midi: 60 + i,
    at: i / 3,
    length: 1 / 3,
    string: 2,
    ...more,
  }));

const times = (plucks: readonly Pluck[]) => plucks.map(({ at }) => Number(at.toFixed(6)));

describe('a plan', () => {
  test('plucks every note once, in order, whatever the notes are', () => {
    const note = fc.record({
      midi: fc.integer({ min: 23, max: 88 }),
      at: fc.integer({ min: 0, max: 48 }).map((n) => n / 12),
      length: fc.integer({ min: 1, max: 24 }).map((n) => n / 12),
    });
    const strung = fc.oneof(
      note,
      note.chain((n) => fc.integer({ min: 1, max: 6 }).map((string) => ({ ...n, string }))),
    );
    fc.assert(
      fc.property(fc.array(strung, { maxLength: 20 }), (notes) => {
        const plan = planOf({ tempo: 100, notes });
        const told = plan.plucks.map(({ index }) => index!).toSorted((a, b) => a - b);
        expect(told).toEqual(notes.map((_, i) => i));
        expect(times(plan.plucks)).toEqual(times(plan.plucks).toSorted((a, b) => a - b));
        for (const { index, midi, at } of plan.plucks) {
          expect({ midi, at }).toEqual({ midi: notes[index!]!.midi, at: notes[index!]!.at });
        }
      }),
    );
  });

  test('gives notes that name no string one where nothing else sounds', () => {
    const chord = [48, 52, 55].map((midi) => ({ midi, at: 0, length: 1 }));
    const { plucks } = planOf({ tempo: 60, notes: [...chord, { midi: 60, at: 1, length: 1 }] });
    expect(new Set(plucks.slice(0, 3).map(({ string }) => string)).size).toBe(3);
    expect(plucks[3]!.string).toBe(plucks[0]!.string);
    for (const { string } of plucks) expect(string).toBeLessThan(0);
  });

  test('damps a note at its length, but not where the next on its string does, nor the last', () => {
    const notes = [
      { midi: 60, at: 0, length: 1, string: 2 },
      { midi: 62, at: 1, length: 0.5, string: 2 },
      { midi: 64, at: 2, length: 1, string: 1 },
    ];
    expect(planOf({ tempo: 60, notes }).dampings).toEqual([{ at: 1.5, string: 2 }]);
    expect(planOf({ tempo: 60, notes }, { loop: true }).dampings).toContainEqual({
      at: 3,
      string: 1,
    });
  });

  test('passes the frets between on a slide, and lands on time', () => {
    const notes: Sound[] = [
      { midi: 60, at: 0, length: 1, string: 3 },
      { midi: 64, at: 1, length: 1, string: 3, articulation: 'slide' },
    ];
    const { plucks } = planOf({ tempo: 60, notes });
    expect(plucks.map(({ midi }) => midi)).toEqual([60, 61, 62, 63, 64]);
    expect(plucks.at(-1)!.at).toBe(1);
    expect(plucks[1]!.at).toBeGreaterThan(0.9);
    expect(plucks.slice(1, -1).every(({ index }) => index === undefined)).toBe(true);
    const down = planOf({ tempo: 60, notes: [notes[0]!, { ...notes[1]!, midi: 57 }] });
    expect(down.plucks.map(({ midi }) => midi)).toEqual([60, 59, 58, 57]);
  });

  // Over a tenth of a second or less before it lands, whatever the tempo, and never over more than half of the time there is.
  test.each([
    [60, 1, [0.9325, 0.955, 0.9775]],
    [120, 1, [0.865, 0.91, 0.955]],
    [60, 0.1, [0.0625, 0.075, 0.0875]],
    [240, 0.5, [0.3125, 0.375, 0.4375]],
  ])('at %i beats a minute slides over four frets, %f beats on, at %o', (tempo, at, passed) => {
    const notes: Sound[] = [
      { midi: 60, at: 0, length: at, string: 3 },
      { midi: 64, at, length: 1, string: 3, articulation: 'slide' },
    ];
    const { plucks } = planOf({ tempo, notes });
    plucks.slice(1, -1).forEach((pluck, i) => expect(pluck.at).toBeCloseTo(passed[i]!, 9));
    expect(plucks).toHaveLength(5);
  });

  test('plucks a note that is joined to nothing', () => {
    const notes: Sound[] = [
      { midi: 60, at: 0, length: 1, string: 3 },
      { midi: 64, at: 1, length: 1, string: 2, articulation: 'hammer-on' },
    ];
    expect(planOf({ tempo: 60, notes }).plucks[1]!.articulation).toBeUndefined();
  });

  test('takes a stretch out and begins with it', () => {
    const plan = planOf({ tempo: 90, notes: triplets(9) }, { stretch: { from: 1, to: 2 } });
    expect(plan.plucks.map(({ index }) => index)).toEqual([3, 4, 5]);
    expect(times(plan.plucks)).toEqual([0, 0.333333, 0.666667]);
    expect(plan.end).toBeCloseTo(1, 9);
  });

  test('rests after each arpeggio and begins the next on a beat', () => {
    const plan = planOf({ tempo: 90, notes: triplets(7) }, { groups: [0, 3, 5], rest: 1 });
    expect(times(plan.plucks)).toEqual([0, 0.333333, 0.666667, 2, 2.333333, 4, 4.333333]);
  });

  test('rests in a loop after the last arpeggio too, before the first comes again', () => {
    const looped = (rest: number) =>
      planOf({ tempo: 90, notes: triplets(6) }, { groups: [0, 3], rest, loop: true });
    expect([1, 2].map((rest) => looped(rest).end)).toEqual([4, 6]);
    expect(times(looped(2).plucks)).toEqual([0, 0.333333, 0.666667, 3, 3.333333, 3.666667]);
    expect(planOf({ tempo: 90, notes: triplets(6) }, { groups: [0, 3], rest: 2 }).end).toBe(4);
  });

  test('rounds a loop up to whole beats', () => {
    const plan = planOf({ tempo: 90, notes: triplets(4) }, { loop: true, countIn: 3 });
    expect(plan).toMatchObject({ start: 3, end: 5, loop: true });
  });

  test.each([
    { subdivision: 1, perBeat: ['bar', 'beat'] },
    { subdivision: 2, perBeat: ['bar', 'between', 'beat', 'between'] },
    { subdivision: 3, perBeat: ['bar', 'between', 'between', 'beat', 'between', 'between'] },
    {
      subdivision: 4,
      perBeat: ['bar', 'between', 'between', 'between', 'beat', 'between', 'between', 'between'],
    },
  ])(
    'clicks $subdivision to the beat, after beats that are counted in',
    ({ subdivision, perBeat }) => {
      const { clicks } = planOf(
        { tempo: 90, notes: triplets(6) },
        { subdivision, countIn: 4, bar: 4 },
      );
      const counted = clicks.filter((click) => click.counted);
      expect(counted.map(({ at, accent }) => [at, accent])).toEqual([
        [0, 'bar'],
        [1, 'beat'],
        [2, 'beat'],
        [3, 'beat'],
      ]);
      const following = clicks.filter((click) => !click.counted);
      expect(following.map(({ accent }) => accent)).toEqual(perBeat);
      following.forEach(({ at }, n) => expect(at).toBeCloseTo(4 + n / subdivision, 9));
    },
  );

  test.each([
    { length: 2, subdivision: 1, at: [0, 1] },
    { length: 7 / 3, subdivision: 1, at: [0, 1, 2] },
    { length: 1.1, subdivision: 2, at: [0, 0.5, 1] },
    { length: 3 * (1 / 3), subdivision: 3, at: [0, 1 / 3, 2 / 3] },
  ])('clicks up to its end, $length beats from the start, and not on it', (given) => {
    const notes = [{ midi: 60, at: 0, length: given.length }];
    const { clicks } = planOf({ tempo: 90, notes }, { subdivision: given.subdivision });
    expect(clicks.map(({ at }) => at)).toEqual(given.at);
  });
});

test('with nothing said a bar has four beats, a click each, an arpeggio is followed by a beat of rest, and no count comes before', () => {
  const notes = Array.from({ length: 8 }, (_, i) => ({ midi: 60, at: i, length: 1 }));
  const { clicks, start, end, plucks } = planOf({ tempo: 80, notes });
  const [bar, beat] = ['bar', 'beat'];
  expect(clicks.map(({ accent }) => accent)).toEqual([
    bar,
    beat,
    beat,
    beat,
    bar,
    beat,
    beat,
    beat,
  ]);
  expect(clicks.map(({ at }) => at)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  expect([start, end]).toEqual([0, 8]);
  expect(new Set(plucks.map(({ strength }) => strength))).toEqual(new Set([0.8]));
  const apart = planOf({ tempo: 80, notes: notes.slice(0, 4) }, { groups: [0, 2] });
  expect(apart.plucks.map(({ at }) => at)).toEqual([0, 1, 3, 4]);
});
