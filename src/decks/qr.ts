/** A link as a picture that another phone's camera reads. */

/** A QR code: an SVG path of its dark squares, in a square `size` units wide, with the quiet margin of 4 in it. */
export interface QrPicture {
  readonly path: string;
  readonly size: number;
}

const MARGIN = 4;

/**
 * The QR code of a text, with the least redundancy, which is what a screen needs (ISO/IEC 18004, level L); the library
 * comes when it is first asked for.
 *
 * @throws RangeError where the text is too long for the largest code (2,953 bytes)
 */
export async function qrPicture(text: string): Promise<QrPicture> {
  const { encode } = await import('uqr');
  if (new TextEncoder().encode(text).length > 2953) {
    throw new RangeError('This link is too long for a QR code: send it as a message instead.');
  }
  const { data, size } = encode(text, { ecc: 'L', border: MARGIN });
  const path = data
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')))
    .join('');
  return { path, size };
}
