import { describe, expect, it } from 'vitest';
import { fretDistances } from '../../src/neck/fret.ts';
import { GUITAR, openMidi } from '../../src/neck/instrument.ts';
import { travel } from '../../src/neck/travel.ts';
import { beats } from '../../src/theory/rhythm.ts';

describe('how far a phrase goes along the neck', () => {
  const at = (places: readonly { string: number; fret: number }[]) => ({
    tempo: 80,
    notes: places.map((place, i) => ({
      midi: openMidi(GUITAR)[place.string - 1]! + place.fret,
      name: 'C',
      at: beats(i),
      length: beats(1),
      place,
    })),
  });

  // 648 mm: fret 12 lies at 324 mm, fret 1 at 36.370 mm (M. Koch's divisor 17.817154).
  it('is told in frets and mm', () => {
    const facts = travel(
      at([
        { string: 1, fret: 1 },
        { string: 1, fret: 12 },
        { string: 2, fret: 1 },
      ]),
      GUITAR,
    )!;
    expect(facts.frets).toEqual([1, 12]);
    expect(facts.reach).toBeCloseTo(287.63, 2);
    expect(facts.way).toBeCloseTo(2 * 287.63, 1);
    expect(facts.strings).toBe(2);
  });

  it('counts open strings for nothing', () =>
    expect(
      travel(
        at([
          { string: 1, fret: 0 },
          { string: 2, fret: 0 },
        ]),
        GUITAR,
      ),
    ).toEqual({ frets: [0, 0], reach: 0, way: 0, strings: 2 }));

  // noah.org, "fret positioning": frets 5 and 7 lie at .250847 and .33258 of 648 mm.
  it('counts open strings for nothing in the middle of a phrase too', () => {
    const facts = travel(
      at([
        { string: 1, fret: 5 },
        { string: 2, fret: 0 },
        { string: 2, fret: 7 },
      ]),
      GUITAR,
    )!;
    expect(facts.frets).toEqual([5, 7]);
    expect(facts.reach).toBeCloseTo(52.963, 2);
    expect(facts.way).toBeCloseTo(52.963, 2);
    expect(facts.strings).toBe(2);
  });

  it('is not told of no notes', () => expect(travel({ tempo: 80, notes: [] }, GUITAR)).toBeNull());

  // Frets 7 and 19 behind no capo are frets 0 and 12 behind one at 7: half of the 432.5 mm that are left.
  it('is shorter behind a capo, where the frets are narrower', () => {
    const places = [
      { string: 1, fret: 1 },
      { string: 1, fret: 13 },
    ];
    const reach = (capo: number) => travel(at(places), { ...GUITAR, capo })!.reach;
    expect(reach(7)).toBeCloseTo(reach(0) / 2 ** (7 / 12), 9);
    expect(reach(0)).toBeCloseTo(305.815, 3);
    expect(reach(7)).toBeCloseTo(204.107, 2);
  });

  it('is not told where a place is missing', () => {
    const [first, ...others] = at([
      { string: 1, fret: 1 },
      { string: 2, fret: 1 },
    ]).notes;
    const { place: _, ...bare } = first!;
    expect(travel({ tempo: 80, notes: [bare, ...others] }, GUITAR)).toBeNull();
  });

  // Beyond a capo on fret 3 lie 544.90 mm; its fifth fret is 136.69 mm on (648 · (2^−¼ − 2^−⅔)).
  it('is counted from the capo', () => {
    const distances = fretDistances({ ...GUITAR, capo: 3 });
    expect(distances[0]).toBe(0);
    expect(distances[5]).toBeCloseTo(136.69, 2);
    expect(distances[12]).toBeCloseTo(272.45, 2);
    expect(fretDistances(GUITAR)[12]).toBeCloseTo(324, 6);
  });
});
