import { readId } from '../decks/readId.ts';
import type { Item } from '../practice/item.ts';
import { KINDS } from './here.ts';

/** The item that an id names, or null where no kind knows it. */
export function itemOf(id: string): Item | null {
  const read = readId(id);
  return read && KINDS[read.head.kind].read(read.head, read.rest);
}
