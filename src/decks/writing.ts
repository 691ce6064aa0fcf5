/** What every deck's document begins with, and what a deck is called by it. */
import { keyName } from '../theory/key.ts';
import { fnv64 } from './bytes.ts';
import type { Deck } from './deck.ts';
import { versionOf } from './version.ts';

/** A document up to its drills; what stands by default is left out. */
export function writeHead<I>(deck: Omit<Deck, 'phrases' | 'marks'>, instrument: I) {
  const { title, note, lessonDay, key } = deck;
  return {
    version: versionOf(deck),
    title,
    ...(note === '' ? {} : { note }),
    ...(lessonDay === null ? {} : { lessonDay }),
    instrument,
    key: keyName(key),
  };
}

/** A short name for a document's content, 16 hexadecimal digits: the same on every machine. */
export function documentId(document: unknown): string {
  const content = new TextEncoder().encode(JSON.stringify(document));
  return fnv64(content).toString(16).padStart(16, '0');
}

/** In a link a day has no dashes: `20261201`. */
export function unfoldDay(letters: string): string {
  return letters.replace(/^(....)(..)(..)$/, '$1-$2-$3');
}

/** A day that the calendar has, `2026-12-01`; null for any other text. */
export function readDay(written: string): string | null {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(written) ? Date.parse(`${written}T00:00Z`) : NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(written) ? written : null;
}
