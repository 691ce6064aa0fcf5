/** How a link is put into its envelope: what `envelope.ts` opens. */
import { crc32 } from './bytes.ts';
import { HEAD, SUM, type LinkName } from './envelope.ts';

/** The most bytes an envelope can hold. */
const MOST_BYTES = 0xffff;

/** A whole link: the page's address, what it is for, and the body in its envelope. */
export function sealLink(name: LinkName, base: string, version: number, body: Uint8Array): string {
  const length = HEAD + body.length + SUM;
  if (length > MOST_BYTES) throw new RangeError(`This ${name} is too large for a link.`);
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  view.setUint8(0, version);
  view.setUint16(1, length);
  bytes.set(body, HEAD);
  view.setUint32(length - SUM, crc32(bytes.subarray(0, length - SUM)));
  return `${base.replace(/#.*$/s, '')}#/${name}/${toBase64url(bytes)}`;
}

/** Bytes in base64url without padding (RFC 4648, section 5). */
export function toBase64url(bytes: Uint8Array): string {
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}
