import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Grid } from '../../src/theory/analysis/grid.ts';
import { atEnd, atStart, cell, latticeOf, table } from '../../src/theory/analysis/lattice.ts';
import type { Lattice } from '../../src/theory/analysis/lattice.ts';
import { isSpan, spansOf, type Spans } from '../../src/theory/analysis/spans.ts';
import { succession } from '../../src/theory/analysis/succession.ts';
import { backward, forward, leastOver } from '../../src/theory/analysis/sweeps.ts';
import * as W from '../../src/theory/analysis/weights.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { seeded } from '../../src/theory/random.ts';
import { DEGREES } from '../../src/theory/scale.ts';

const KEYS = [
  { tonic: 'Bb', scale: 'major' },
  { tonic: 'C', scale: 'minor' },
] as const;

/** A lattice and a grid by chance: their costs mean nothing. */
function drawn(seed: number, notes: number, ruled: readonly [number, number] | null) {
  const random = seeded(seed);
  const key = random.pick(KEYS);
  const spans = spansOf(notes, 5, ruled ? [{ span: ruled }] : []);
  const chance = (most: number) => () => most * random.next();
  const by = (most: number) => Float64Array.from({ length: spans.count }, chance(most));
  const before = Int32Array.from({ length: spans.count }, () =>
    random.below(3) === 0 ? 0 : 1 + random.below(5),
  );
  for (let from = 0; from < notes; from++)
    for (let length = spans.least[from]!; length <= spans.most[from]!; length++) {
      const span = spans.base[from]! + length;
      if (before[span]! > from) before[span] = 0;
    }
  const even = Float64Array.from(before, (earlier) => (earlier === 0 ? Infinity : -random.next()));
  const chords = DEGREES.flatMap((degree) =>
    (['triad', 'seventh'] as const).map((size) => chordOn(key, degree, size)),
  );
  const costs = chords.map(() => by(4).map((cost) => (cost > 3.6 ? Infinity : cost)));
  const lattice = latticeOf({ notes, spans, chords, costs }, { before, even }, succession(key));
  return { lattice, grid: { cost: random.next(), lies: by(6) } };
}

const each = (spans: Spans, visit: (from: number, length: number) => void) =>
  spans.base.forEach((_, from) => {
    for (let length = 1; length <= spans.longest; length++)
      if (isSpan(spans, from, length)) visit(from, length);
  });

/** From every group that ends before a note, on every degree. */
function endingAt({ spans }: Lattice, to: number) {
  const found: { length: number; degree: number; at: number }[] = [];
  each(spans, (from, length) => {
    if (from + length !== to) return;
    for (const degree of DEGREES)
      found.push({ length, degree, at: cell(spans, from, length, degree) });
  });
  return found;
}

/** What it costs that a group comes after one of so many notes, and its degree after that one's. */
function stepCost(lattice: Lattice, span: number, length: number, before: number, degree: number) {
  const { evenness, transitions } = lattice;
  const more =
    evenness.before[span] === length ? Math.min(W.uneven, evenness.even[span]!) : W.uneven;
  return { next: transitions.next[(before - 1) * 7 + degree - 1]!, more };
}

/** The way to each group as it is defined, from every group before it. */
function plainForward(lattice: Lattice, { cost, lies }: Grid) {
  const { notes, spans, least, transitions } = lattice;
  const [entry, ended] = [table(spans), table(spans)];
  each(spans, (from, length) => {
    const span = spans.base[from]! + length;
    for (const degree of DEGREES) {
      const at = cell(spans, from, length, degree);
      const ways = endingAt(lattice, from).map((before) => {
        const { next, more } = stepCost(lattice, span, before.length, before.degree, degree);
        return ended[before.at]! + next + more;
      });
      const arrived = from === 0 ? atStart(degree) : Math.min(...ways);
      entry[at] = arrived + transitions.own[degree - 1]!;
      ended[at] = entry[at]! + lies[span]! + least[at]!;
    }
  });
  const ends = endingAt(lattice, notes).map(({ at, degree }) => ended[at]! + atEnd(degree));
  return { cost: Math.min(...ends) + cost, entry, ended };
}

/** The way on from each group as it is defined, by every group after it. */
function plainBackward(lattice: Lattice, { lies }: Grid) {
  const { notes, spans, least, transitions } = lattice;
  const after = table(spans);
  for (let to = notes; to > 0; to--)
    for (const { length, degree, at } of endingAt(lattice, to)) {
      after[at] = to === notes ? atEnd(degree) : Infinity;
      each(spans, (from, on) => {
        if (from !== to) return;
        const span = spans.base[from]! + on;
        for (const other of DEGREES) {
          const then = cell(spans, from, on, other);
          const { next, more } = stepCost(lattice, span, length, degree, other);
          const own = transitions.own[other - 1]! + least[then]! + after[then]! + lies[span]!;
          after[at] = Math.min(after[at]!, next + own + more);
        }
      });
    }
  return after;
}

const lattices = fc
  .record({
    seed: fc.integer({ min: 0, max: 2 ** 31 }),
    notes: fc.integer({ min: 1, max: 14 }),
    ruled: fc.option(fc.tuple(fc.nat(13), fc.nat(13))),
  })
  .map(({ seed, notes, ruled }) => {
    const ends = (ruled ?? []).map((end) => end % notes).toSorted((a, b) => a - b);
    return drawn(seed, notes, ruled && [ends[0]!, ends[1]! + 1]);
  });

test('sweeps come to the same, to the last bit, as from every group to every other', () => {
  fc.assert(
    fc.property(lattices, ({ lattice, grid }) => {
      expect(forward(lattice, grid)).toEqual(plainForward(lattice, grid));
      expect(backward(lattice, grid)).toEqual(plainBackward(lattice, grid));
    }),
    { numRuns: 60 },
  );
});

test('no path costs less than is told beforehand', () => {
  fc.assert(
    fc.property(lattices, ({ lattice, grid }) => {
      expect(leastOver(lattice)(grid)).toBeLessThanOrEqual(forward(lattice, grid).cost);
    }),
    { numRuns: 100 },
  );
});
