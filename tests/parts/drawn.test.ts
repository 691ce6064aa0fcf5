/** Small pictures, drawn without a browser: higher is higher, and a left hand has them the other way round. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { afterEach, describe, expect, it } from 'vitest';
import { GUITAR } from '../../src/neck/instrument.ts';
import { Hops } from '../../src/parts/Hops.tsx';
import { drawnFor } from '../../src/parts/handedness.ts';
import { SmallNeck } from '../../src/parts/SmallNeck.tsx';

it('a path hops from left to right, the higher the pitch the higher up', () => {
  const html = renderToString(h(Hops, { heights: [0, 4, 2, 4] }));
  const points = Array.from(html.matchAll(/cx="([\d.]+)" cy="([\d.]+)"/g), ([, x, y]) => [
    Number(x),
    Number(y),
  ]);
  const [first, second, third, fourth] = points as [number[], number[], number[], number[]];
  expect(points.map(([x]) => x)).toEqual(points.map(([x]) => x!).toSorted((a, b) => a - b));
  // On a screen what is higher up is less.
  expect(second[1]).toBeLessThan(third[1]!);
  expect(third[1]).toBeLessThan(first[1]!);
  expect(fourth[1]).toBe(second[1]);
});

describe('a small neck', () => {
  afterEach(() => {
    drawnFor.value = null;
  });

  /** Where a dot on the lowest string, fret 1, and one on the highest, fret 4, are drawn. */
  const dots = (leftHanded: boolean, lies: boolean) => {
    const html = renderToString(
      h(SmallNeck, {
        instrument: { ...GUITAR, leftHanded },
        frets: [1, 5],
        lies,
        dots: [
          { string: 6, fret: 1 },
          { string: 1, fret: 4 },
        ],
      }),
    );
    const found = html.matchAll(/class="mark[^"]*" transform="translate\(([\d.]+) ([\d.]+)\)"/g);
    const [low, high] = Array.from(found, ([, x, y]) => ({ x: Number(x), y: Number(y) }));
    return { low: low!, high: high! };
  };

  it('that stands has the nut on top, and the highest string on the right, for the left hand on the left', () => {
    const [right, left] = [dots(false, false), dots(true, false)];
    for (const { low, high } of [right, left]) expect(low.y).toBeLessThan(high.y);
    expect(right.low.x).toBeLessThan(right.high.x);
    expect(left.low.x).toBeGreaterThan(left.high.x);
  });

  it('that lies has the highest string on top, and the nut on the left, for the left hand on the right', () => {
    const [right, left] = [dots(false, true), dots(true, true)];
    for (const { low, high } of [right, left]) expect(low.y).toBeGreaterThan(high.y);
    expect(right.low.x).toBeLessThan(right.high.x);
    expect(left.low.x).toBeGreaterThan(left.high.x);
  });

  it('is drawn for the hand that was chosen, whatever the lesson says', () => {
    drawnFor.value = 'left';
    expect(dots(false, false)).toEqual(dots(true, false));
    const left = dots(true, false);
    drawnFor.value = 'right';
    expect(dots(true, false)).toEqual(dots(false, false));
    expect(dots(true, false)).not.toEqual(left);
  });
});
