import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/**
 * Colours as the stylesheet uses them. Palette: Okabe & Ito, Color Universal Design, 2008. Contrast: WCAG 2.2, relative
 * luminance; 1.4.3 asks 4.5 : 1 of text, 1.4.11 asks 3 : 1 of what carries meaning.
 */
const OKABE_ITO = ['#e69f00', '#56b4e9', '#009e73', '#f0e442', '#0072b2', '#d55e00', '#cc79a7'];

const css = readFileSync('src/parts/frame.css', 'utf8');
const neckCss = readFileSync('src/parts/Neck.css', 'utf8');

function token(name: string): { day: string; night: string } {
  const [, day, night] = new RegExp(`--${name}: light-dark\\((#\\w+), (#\\w+)\\)`).exec(css)!;
  return { day: day!, night: night! };
}

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
}

describe('the colours', () => {
  it('are those of Okabe and Ito by day', () => {
    for (const name of ['third', 'fifth', 'seventh', 'ninth', 'right', 'wrong']) {
      expect(OKABE_ITO, name).toContain(token(name).day);
    }
  });

  it('agree with the measured contrasts of the palette on white', () => {
    // Measured figures: orange 2.25, sky 2.31, yellow 1.32.
    expect(contrast('#e69f00', '#ffffff')).toBeCloseTo(2.25, 2);
    expect(contrast('#56b4e9', '#ffffff')).toBeCloseTo(2.31, 2);
    expect(contrast('#f0e442', '#ffffff')).toBeCloseTo(1.32, 2);
  });

  it.each(['day', 'night'] as const)('let text be read by %s', (time) => {
    for (const ground of ['paper', 'raised']) {
      for (const ink of ['ink', 'soft']) {
        expect(
          contrast(token(ink)[time], token(ground)[time]),
          `${ink} on ${ground}`,
        ).toBeGreaterThanOrEqual(4.5);
      }
    }
  });

  it.each(['day', 'night'] as const)(
    'show members and verdicts at 3 : 1 by %s, or give them an edge of ink',
    (time) => {
      const paper = token('paper')[time];
      for (const name of ['third', 'fifth', 'right', 'wrong', 'edge', 'string']) {
        expect(contrast(token(name)[time], paper), name).toBeGreaterThanOrEqual(3);
      }
      // Seventh and ninth are outlined in ink, as orange and pink on white ask for.
      const outlined =
        /\.member-7,\s*\.member-9,[^{]*\{[^}]*border: 1\.5px solid var\(--ink\)/.test(neckCss);
      expect(outlined).toBe(true);
    },
  );

  it('let the number in each dot be read', () => {
    for (const time of ['day', 'night'] as const) {
      const numberOn = {
        third: token('paper')[time],
        fifth: '#12161d',
        seventh: '#12161d',
        ninth: '#12161d',
      };
      for (const [name, ink] of Object.entries(numberOn)) {
        expect(contrast(token(name)[time], ink), `${name} by ${time}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  });
});
