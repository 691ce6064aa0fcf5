import { describe, expect, it } from 'vitest';
import { cell, hasInlay, inlayAt, neighbour, type Layout } from '../../src/parts/neckLayout.ts';

const layout = (part: Partial<Layout>): Layout => ({
  strings: 6,
  frets: [1, 5],
  lying: false,
  mirrored: false,
  ...part,
});
const at = (part: Partial<Layout>, string: number, fret: number) => {
  const { gridColumn, gridRow } = cell(layout(part), { string, fret });
  return `${gridColumn}/${gridRow}`;
};

/** Columns and rows from 1; the first holds what stands at the neck's edge. */
describe('a place on the screen', () => {
  it.each([
    // Upright: the lowest string on the left, the nut at the top.
    [{}, 6, 1, '2/2'],
    [{}, 1, 1, '7/2'],
    [{}, 1, 5, '7/6'],
    // In the left hand the lowest string is on the right, the frets run down as before.
    [{ mirrored: true }, 6, 1, '7/2'],
    [{ mirrored: true }, 1, 1, '2/2'],
    [{ mirrored: true }, 1, 5, '2/6'],
    // Lying: the highest string on top, the nut on the left.
    [{ lying: true }, 1, 1, '2/1'],
    [{ lying: true }, 6, 5, '6/6'],
    // In the left hand the nut is on the right, the strings lie as before.
    [{ lying: true, mirrored: true }, 1, 1, '5/1'],
    [{ lying: true, mirrored: true }, 6, 5, '1/6'],
  ] as const)('%o: string %i, fret %i is at %s', (part, string, fret, where) =>
    expect(at(part, string, fret)).toBe(where),
  );

  it('that names a string or a fret keeps its edge in either hand', () => {
    expect(at({ mirrored: true }, 7, 3)).toBe('1/4');
    expect(at({}, 7, 3)).toBe('1/4');
    expect(at({ lying: true, mirrored: true }, 2, 0)).toBe('6/2');
  });
});

describe('inlays', () => {
  const inlaid = (capo: number) =>
    Array.from({ length: 12 }, (_, i) => i + 1).filter((fret) => hasInlay(fret, capo));

  // Common practice: 3 5 7 9 12 15 17 19 21 24.
  it('stay on the neck where they are, whatever fret is counted from a capo', () => {
    expect(inlaid(0)).toEqual([3, 5, 7, 9, 12]);
    expect(inlaid(2)).toEqual([1, 3, 5, 7, 10]);
    expect(inlaid(7)).toEqual([2, 5, 8, 10, 12]);
  });

  it('lie in the middle across', () => {
    expect(inlayAt(layout({}), 3)).toEqual({ gridRow: '4', gridColumn: '2 / 8' });
    expect(inlayAt(layout({ lying: true }), 3)).toEqual({ gridColumn: '4', gridRow: '1 / 7' });
  });
});

/** From string 3, fret 3, in each of the four ways a neck is drawn; the arrow goes where it points on the screen. */
describe('an arrow key', () => {
  it.each([
    [{}, { ArrowUp: '3/2', ArrowDown: '3/4', ArrowLeft: '4/3', ArrowRight: '2/3' }],
    [{ mirrored: true }, { ArrowUp: '3/2', ArrowDown: '3/4', ArrowLeft: '2/3', ArrowRight: '4/3' }],
    [{ lying: true }, { ArrowUp: '2/3', ArrowDown: '4/3', ArrowLeft: '3/2', ArrowRight: '3/4' }],
    [
      { lying: true, mirrored: true },
      { ArrowUp: '2/3', ArrowDown: '4/3', ArrowLeft: '3/4', ArrowRight: '3/2' },
    ],
  ] as const)('on %o leads to %o', (part, ways) => {
    for (const [key, where] of Object.entries(ways)) {
      const { string, fret } = neighbour(key, { string: 3, fret: 3 }, layout(part))!;
      expect(`${string}/${fret}`, key).toBe(where);
      // It is the next place on the screen, too.
      const [column, row] = at(part, string, fret).split('/').map(Number);
      const [fromColumn, fromRow] = at(part, 3, 3).split('/').map(Number);
      expect([column! - fromColumn!, row! - fromRow!], key).toEqual(
        { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] }[key],
      );
    }
  });

  it('leads to no place beyond the edge, and no other key anywhere', () => {
    expect(neighbour('ArrowUp', { string: 6, fret: 1 }, layout({}))).toEqual({
      string: 6,
      fret: 1,
    });
    expect(neighbour('ArrowLeft', { string: 6, fret: 1 }, layout({}))).toEqual({
      string: 6,
      fret: 1,
    });
    expect(neighbour('ArrowDown', { string: 1, fret: 5 }, layout({}))).toEqual({
      string: 1,
      fret: 5,
    });
    expect(neighbour('Enter', { string: 3, fret: 3 }, layout({}))).toBeNull();
  });
});
