import { describe, expect, it } from 'vitest';
import { eventOf, likeliest, noteOdds } from '../../src/listening/event.ts';
import { featuresOf, pluckOdds, singlePluckOdds } from '../../src/listening/evidence.ts';
import type { Fresh } from '../../src/listening/fresh.ts';
import { LOWEST_HEARD } from '../../src/listening/salience.ts';
import { frequency } from '../../src/theory/note.ts';

const A = 45;

/** Twelve partials of a low A, of each so much new (0 to 1), by its number. */
const partialsOf = (isNew: (h: number) => number): Fresh[] =>
  Array.from({ length: 12 }, (_, i) => {
    const level = 0.1 / (i + 1);
    const fresh = level * isNew(i + 1);
    return { hertz: (i + 1) * frequency(A, 440), fresh, level, before: level - fresh };
  });

const heard = (isNew: (h: number) => number, jump: number) =>
  eventOf(0, { partials: partialsOf(isNew), heard: { strength: 10, jump } }, 440);

describe('an onset', () => {
  it('is the pluck of the note whose partials are new, if it begins sharply', () => {
    const pluck = heard(() => 1, 3);
    expect(likeliest(pluck)).toBe(A);
    expect(noteOdds(pluck, A)).toBeGreaterThan(2);
    expect(
      noteOdds(
        heard(() => 1, 0.1),
        A,
      ),
    ).toBeLessThan(noteOdds(pluck, A) - 4);
  });

  it('begins sharply or not: sharper than a string does says nothing more', () => {
    const odds = [0, 0.5, 1, 3].map((jump) =>
      noteOdds(
        heard(() => 1, jump),
        A,
      ),
    );
    expect(odds[0]).toBeLessThan(odds[1]!);
    expect(odds[1]).toBeLessThan(odds[2]!);
    expect(odds[3]).toBe(odds[2]);
  });

  it('is the octave where only every second partial of the lower note is new', () => {
    const octave = heard((h) => (h % 2 ? 0 : 1), 3);
    expect(likeliest(octave)).toBe(A + 12);
    // What is left over of the lower note's own partials does not make it that note.
    expect(likeliest(heard((h) => (h % 2 ? 0.03 : 1), 3))).toBe(A + 12);
  });

  it('is the octave where the odd partials of the lower note that rings are not foretold rightly, but do not grow', () => {
    const levels = (growth: number): Fresh[] =>
      partialsOf((h) => (h % 2 ? 0.5 : 1)).map((partial, i) =>
        i % 2 ? partial : { ...partial, level: growth * partial.level, before: partial.level },
      );
    const odds = (growth: number) => {
      const event = eventOf(0, { partials: levels(growth), heard: { strength: 10, jump: 3 } }, 440);
      return noteOdds(event, A + 12) - noteOdds(event, A);
    };
    expect(odds(0.9)).toBeGreaterThan(odds(1.5));
    expect(odds(1.5)).toBeGreaterThan(odds(3));
  });

  it('is told from its octave more plainly where one note is plucked at a time', () => {
    const plainly = (isNew: (h: number) => number, oddsOf = singlePluckOdds) => {
      const features = featuresOf(partialsOf(isNew), { strength: 10, jump: 3 }, 440);
      const odds = oddsOf(features);
      return odds[A + 12 - LOWEST_HEARD]! - odds[A - LOWEST_HEARD]!;
    };
    const octave = (left: number) => (h: number) => (h % 2 ? left : 1);
    for (const left of [0, 0.02, 0.05]) {
      expect(plainly(octave(left))).toBeGreaterThan(2);
      expect(plainly(octave(left))).toBeGreaterThan(plainly(octave(left), pluckOdds) + 1);
    }
    for (const left of [0.3, 0.5, 1]) expect(plainly(octave(left))).toBeLessThan(-4);
  });

  it('is no less likely one of two an octave apart for being told which', () => {
    const features = featuresOf(
      partialsOf(() => 1),
      { strength: 10, jump: 3 },
      440,
    );
    const [all, single] = [pluckOdds(features), singlePluckOdds(features)];
    const i = A - LOWEST_HEARD;
    expect(single[i]!).toBeCloseTo(all[i]!, 1);
    // Without a note an octave below or above to be told from there is less to tell.
    for (const at of [0, single.length - 1]) expect(Number.isFinite(single[at])).toBe(true);
  });

  it('is no pluck of what rings on', () => {
    expect(
      noteOdds(
        heard(() => 0.05, 3),
        A,
      ),
    ).toBeLessThan(
      noteOdds(
        heard(() => 1, 3),
        A,
      ) - 2,
    );
  });
});
