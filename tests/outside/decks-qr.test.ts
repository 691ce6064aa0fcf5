import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { qrPicture } from '../../src/decks/qr.ts';
import type { QrPicture } from '../../src/decks/qr.ts';

/** The picture as a camera sees it, each square `scale` pixels wide; drawn from the path, as the page draws it. */
function photograph({ path, size }: QrPicture, scale: number) {
  const width = size * scale;
  const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let dy = 0; dy < scale; dy++) {
      const from = ((Number(y) * scale + dy) * width + Number(x) * scale) * 4;
      for (let i = 0; i < scale; i++) pixels.set([0, 0, 0], from + i * 4);
    }
  }
  return { pixels, width };
}

/** As long as links are: a plain lesson, a report, a lesson with a phrase, and the longest that is promised. */
const LENGTHS = [290, 500, 750, 1500];

describe('a QR code, as an independent decoder (jsQR 1.4.0) reads it', () => {
  it.each(LENGTHS)(
    'gives back a link of %i characters from a picture of phone size',
    async (length) => {
      const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
      const payload = Array.from(
        { length },
        (_, i) => letters[(i * 37 + ((i * i) >> 3)) % 64],
      ).join('');
      const link = `https://music-room.example.org/#/lesson/${payload}`.slice(0, length);
      const picture = await qrPicture(link);
      const scale = 5;
      const { pixels, width } = photograph(picture, scale);
      // A phone 360 CSS pixels wide has 1080 of its own, and a margin on either side.
      expect(width).toBeLessThan(1000);
      const { default: decode } = jsQR as unknown as { default?: typeof jsQR };
      expect((decode ?? jsQR)(pixels, width, width)?.data).toBe(link);
    },
  );

  // ISO/IEC 18004, table 7: version 40, 177 squares wide, holds 2,953 bytes at level L.
  it('holds as many bytes as the largest there is, and says so of more', async () => {
    const link = `#/lesson/${'x'.repeat(2942)}é`;
    expect((await qrPicture(link)).size).toBe(177 + 2 * 4);
    await expect(qrPicture(`${link}x`)).rejects.toThrow('too long for a QR code');
  });
});
