import { instrumentFromId } from '../neck/instrumentFault.ts';
import { SIZES } from '../theory/chord.ts';
import { parseKey } from '../theory/key.ts';
import { DEGREES, hasSevenNotes } from '../theory/scale.ts';
import { isKind } from './kinds.ts';
import { type IdHead, partsOf, writeId } from './id.ts';

/** An id taken apart. */
interface ReadId {
  readonly head: IdHead;
  /** What the kind says behind the head, part by part. */
  readonly rest: readonly string[];
}

/** The head and the rest of an id, or null where it names no kind, key, degree, size or instrument that there is. */
export function readId(id: string): ReadId | null {
  const [kind = '', keyText = '', degreeText, size, instrumentText = '', ...rest] = partsOf(id);
  const key = parseKey(keyText);
  const instrument = instrumentFromId(instrumentText);
  if (!isKind(kind) || !key || !hasSevenNotes(key.scale) || !instrument) return null;
  const degree = Number(degreeText);
  const sized = SIZES.find((one) => one === size);
  if (!DEGREES.includes(degree) || !sized) return null;
  const head = { kind, key, degree, size: sized, instrument };
  return writeId(head, rest) === id ? { head, rest } : null;
}
