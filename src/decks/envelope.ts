/**
 * What every link of ours is wrapped in, so that a lesson and a report are damaged, and found to be
 * damaged, in the same ways:
 *
 *     version (1 byte) · length of the whole (2 bytes, high first) · body · CRC-32 of all before it (4 bytes)
 *
 * in base64url. The length tells a link that was cut short from one that was altered, and lets a link
 * be read that has other text behind it.
 */
import { crc32, fromBase64url } from './bytes.ts';

/** The most characters looked at when a link is read: whoever pastes a novel is told so. */
const MOST_TEXT = 200_000;

export const HEAD = 3;
export const SUM = 4;

/** What a link is for, as it stands in the address: `#/lesson/…`, `#/report/…`. */
export type LinkName = 'lesson' | 'report';

/** One clear sentence or two: what is wrong, and what to do. */
export interface Fault {
  readonly fault: string;
  /** Where nothing is wrong with it but that a newer version of Skipwise made it. */
  readonly newer?: true;
}

/** What a link holds, and the link's own letters without whatever stood around them. */
interface Opened {
  /** Which version of the body it is, from 1. */
  readonly version: number;
  readonly body: Uint8Array<ArrayBuffer>;
  readonly payload: string;
}

/**
 * The body of a link, from the whole address, the part after `#`, or the payload alone; white space
 * anywhere, angle brackets and text around it do no harm.
 *
 * @param version the newest version that the caller can read
 */
export function openLink(name: LinkName, version: number, text: string): Opened | Fault {
  if (text.length > MOST_TEXT) {
    return {
      fault: `This is too large to be a ${name} link. Copy the link alone and paste it again.`,
    };
  }
  const payload = findPayload(name, text);
  if (typeof payload !== 'string') return payload;

  const head = fromBase64url(payload.slice(0, 4));
  const told = head && head.length === HEAD ? new DataView(head.buffer).getUint16(1) : Infinity;
  const digits = Math.ceil((told * 4) / 3);
  if (payload.length < digits) return { fault: cutShort(name) };
  const bytes = fromBase64url(payload.slice(0, digits));
  if (!bytes || bytes.length < HEAD + SUM) return { fault: altered(name) };
  const end = bytes.length - SUM;
  const sum = new DataView(bytes.buffer).getUint32(end);
  if (sum !== crc32(bytes.subarray(0, end))) return { fault: altered(name) };

  const written = bytes[0] ?? 0;
  if (written > version) {
    return {
      fault: `This ${name} was made with a newer version of Skipwise. Open the page online once to update it, then open the link again.`,
      newer: true,
    };
  }
  return written === 0
    ? { fault: altered(name) }
    : { version: written, body: bytes.subarray(HEAD, end), payload: payload.slice(0, digits) };
}

/** Said of a link whose end is missing. */
function cutShort(name: LinkName): string {
  return `This ${name} link was cut short: its end is missing. Copy the whole link and paste it again, or ask for it once more.`;
}

/** Said of a link that does not say what it said when it was made. */
export function altered(name: LinkName): string {
  return `This ${name} link was altered on the way. Copy it again from the message it came in, or ask for it once more.`;
}

const OTHER: Record<LinkName, string> = {
  lesson: 'This is a report, not a lesson. Open it under Teach.',
  report: 'This is a lesson, not a report. Open it under Lessons.',
};

function findPayload(name: LinkName, text: string): string | Fault {
  const joined = text.replace(/[\s\u200b\ufeff]+/g, '');
  const named = /(?:^|#)\/?(lesson|report)\/([\w-]*)/.exec(joined);
  if (named) {
    return named[1] === name ? (named[2] ?? '') : { fault: OTHER[name] };
  }
  const bare = /^[<("']*([A-D][\w-]{11,})[>)"'.,]*$/.exec(joined);
  if (bare?.[1]) return bare[1];
  return {
    fault: `This is not a ${name} link. A ${name} link has “#/${name}/” in it: copy it whole from the message it came in.`,
  };
}
