/**
 * The ids of items, `spot:Bb major:2:triad:guitar:5-4:1-5`: the kind, the key, the degree, the chord's size, the
 * instrument, and behind that head what the kind itself says. Ids come from the log, from links and from backups; here
 * alone they are taken apart.
 */
import { instrumentId, type Instrument } from '../neck/instrument.ts';
import type { Size } from '../theory/chord.ts';
import { keyName, type Key } from '../theory/key.ts';
import type { KindName } from './kinds.ts';

/** What every id says. */
export interface IdHead<K extends KindName = KindName> {
  readonly kind: K;
  /** Of seven notes. */
  readonly key: Key;
  /** 1 to 7. */
  readonly degree: number;
  readonly size: Size;
  /** Of its usual length, right-handed: an id says no more of it. */
  readonly instrument: Instrument;
}

/** Where the degree stands in an id. */
const DEGREE = 2;

/** The id of an item. Inverts `readId`. */
export function writeId(head: IdHead, rest: readonly (string | number)[]): string {
  const { kind, key, degree, size, instrument } = head;
  return [kind, keyName(key), degree, size, instrumentId(instrument), ...rest].join(':');
}

/** The parts of an id, of whatever sort. */
export function partsOf(id: string): readonly string[] {
  return id.split(':');
}

/** The kind that an id names, of an id of whatever sort; it may be none that there is. */
export function kindOf(id: string): string {
  const end = id.indexOf(':');
  return end < 0 ? id : id.slice(0, end);
}

/** The id of the item that differs from another in nothing but its degree. */
export function withDegree(id: string, degree: number): string {
  return partsOf(id).with(DEGREE, String(degree)).join(':');
}

/** An id with one part after another left open, but for kind and degree: what it shares with its siblings. */
export function openings(id: string): readonly string[] {
  const parts = partsOf(id);
  return parts.flatMap((_, open) =>
    open === 0 || open === DEGREE ? [] : [parts.with(open, '*').join(':')],
  );
}
