/**
 * The deck document: a deck as JSON that a teacher can read and write by hand; `drills/README.md`
 * explains it, `schema.ts` enforces it. Whatever comes in is untrusted, and a fault says what is
 * wrong, where, and what to write instead.
 */
import * as v from 'valibot';
import { choiceText } from '../neck/choice.ts';
import { fretsLeft } from '../neck/instrument.ts';
import { midiAt, placeLabel } from '../neck/place.ts';
import { MOST, type Deck, type TaughtPhrase } from './deck.ts';
import { costFault, rulingsFault } from './cost.ts';
import { drillFormOf } from './drills/index.ts';
import type { Fault } from './envelope.ts';
import { writeInstrument } from './instrument.ts';
import { readMarks, writeMarks } from './marks.ts';
import { writeNotes } from './notes.ts';
import { readRulings, writeRulings } from './rulings.ts';
import { Document } from './schema.ts';
import { DOCUMENT_VERSION } from './version.ts';
import { documentId, writeHead } from './writing.ts';

/** A deck as it is written to a file. */
export type DeckDocument = v.InferInput<typeof Document>;

/**
 * The deck that a document holds, or a sentence saying where the first fault is and what to write.
 *
 * @param document parsed JSON, from anyone
 */
export function readDeck(document: unknown): { readonly deck: Deck } | Fault {
  if (isNewer(document)) {
    return {
      fault:
        'This lesson was made with a newer version of Skipwise. Update this one, then open it again.',
      newer: true,
    };
  }
  const read = v.safeParse(Document, document, { abortEarly: true });
  if (!read.success) {
    const [issue] = read.issues;
    return { fault: `${where(issue.path ?? [])}: ${issue.message}.` };
  }
  const { version: _, marks, phrases: written, ...rest } = read.output;
  const phrases: TaughtPhrase[] = [];
  // Before any of them is read: that is what costs.
  const count = written.reduce((sum, { outline = [] }) => sum + outline.length, 0);
  if (count > MOST.rulings) return { fault: rulingsFault(count) };
  for (const [i, { outline = [], ...phrase }] of written.entries()) {
    const rulings = readRulings(outline, phrase.notes.length, rest.key);
    if ('fault' in rulings) return { fault: `Phrase ${i + 1}, outline: ${rulings.fault}.` };
    phrases.push(rulings.length === 0 ? phrase : { ...phrase, rulings });
  }
  const hasMarks = Object.keys(marks ?? {}).length > 0;
  const deck: Deck = { ...rest, phrases, ...(hasMarks && { marks: readMarks(marks!, rest) }) };
  const fault = costFault(deck) ?? misfit(deck);
  return fault === null ? { deck } : { fault };
}

/**
 * The document of a deck. Inverts `readDeck`; what stands by default is left out.
 *
 * @throws RangeError where a mark is on no item of the deck's key and instrument, or a ruling names no chord of the key
 */
export function writeDeck(deck: Deck): DeckDocument {
  return {
    ...writeHead(deck, writeInstrument(deck.instrument)),
    drills: deck.drills.map((drill) => drillFormOf(drill.kind).write(drill)),
    ...(deck.phrases.length === 0
      ? {}
      : { phrases: deck.phrases.map((phrase) => writePhrase(phrase, deck)) }),
    ...(Object.keys(deck.marks ?? {}).length === 0 ? {} : { marks: writeMarks(deck.marks!, deck) }),
  };
}

/** A short name for a deck's content, 16 hexadecimal digits: the same on every machine. */
export function deckId(deck: Deck): string {
  return documentId(writeDeck(deck));
}

function isNewer(document: unknown): boolean {
  return (
    typeof document === 'object' &&
    document !== null &&
    'version' in document &&
    Number.isInteger(document.version) &&
    Number(document.version) > DOCUMENT_VERSION
  );
}

/** What one entry of a list is called. */
const ENTRY: ReadonlyMap<unknown, string> = new Map([
  ['drills', 'drill'],
  ['phrases', 'phrase'],
  ['degrees', 'degree'],
  ['sizes', 'size'],
  ['strings', 'string set'],
  ['frets', 'fret'],
  ['contours', 'contour'],
  ['ways', 'way'],
  ['figures', 'figure'],
  ['tempos', 'tempo'],
  ['clicks', 'click'],
  ['notes', 'note'],
  ['outline', 'entry'],
  ['tuning', 'open string'],
]);

/** Where in the document: `Drill 2, frets`. */
function where(path: readonly { readonly key?: unknown }[]): string {
  const keys = path.map(({ key }) => key);
  const words = keys.flatMap((key, i) => {
    if (typeof key === 'number') return [];
    const next = keys[i + 1];
    return [
      typeof next === 'number' ? `${ENTRY.get(key) ?? String(key)} ${next + 1}` : String(key),
    ];
  });
  const place = words.join(', ') || 'the lesson';
  return place.charAt(0).toUpperCase() + place.slice(1);
}

/** What is right by itself but cannot be in this deck's key or on its instrument, or null. */
function misfit(deck: Deck): string | null {
  const { instrument, drills, phrases } = deck;
  const highest = fretsLeft(instrument);
  for (const [i, drill] of drills.entries()) {
    const found = drillFormOf(drill.kind).misfit(drill, deck);
    if (found) return `Drill ${i + 1}${found.word ? `, ${found.word}` : ''}: ${found.says}`;
  }
  for (const [i, phrase] of phrases.entries()) {
    for (const [k, { place, midi }] of phrase.notes.entries()) {
      if (place && (place.fret > highest || midiAt(instrument, place) !== midi)) {
        return `Phrase ${i + 1}, note ${k + 1}: ${placeLabel(place)} does not sound that note: change one of them, or leave the place out.`;
      }
    }
  }
  return null;
}

function writePhrase({ tempo, notes, rulings = [], hand }: TaughtPhrase, { key }: Deck) {
  return {
    tempo,
    notes: writeNotes(notes),
    ...(hand !== undefined && { hand: choiceText(hand) }),
    ...(rulings.length === 0 ? {} : { outline: writeRulings(rulings, key) }),
  };
}
