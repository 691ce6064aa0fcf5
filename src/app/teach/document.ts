/**
 * A draft as the device keeps it: the lesson it makes as a deck document, without drills, and beside that what only the
 * form knows. Whatever is read is checked, since it may come from a backup's file.
 */
import * as v from 'valibot';
import { CONTOURS, KIND_NAMES, PHRASE_KINDS, RHYTHMS, type Marks } from '../../decks/deck.ts';
import { readDeck, writeDeck, type DeckDocument } from '../../decks/document.ts';
import type { Fault } from '../../decks/envelope.ts';
import { LONGEST_ID } from '../../store/review.ts';
import { SIZES } from '../../theory/chord.ts';
import { readEntry, writeEntry } from '../phrases/document.ts';
import { deckOf, type Draft } from './draft.ts';

const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high));
const few = <S extends v.GenericSchema>(each: S, most: number) =>
  v.pipe(v.array(each), v.maxLength(most));

const chords = { degrees: few(whole(1, 7), 7), sizes: few(v.picklist(SIZES), SIZES.length) };
const lying = {
  strings: few(v.pipe(few(whole(1, 9), 9), v.minLength(1)), 100),
  frets: v.strictTuple([whole(0, 27), whole(0, 27)]),
};
const Apart = v.variant('kind', [
  v.strictObject({ kind: v.picklist(['spot', 'place']), ...chords, ...lying }),
  v.strictObject({
    kind: v.literal('trace'),
    ...chords,
    contours: few(v.picklist(CONTOURS), CONTOURS.length),
    tempo: whole(30, 240),
    rhythm: v.exactOptional(v.picklist(RHYTHMS)),
  }),
  v.strictObject({
    kind: v.picklist(PHRASE_KINDS),
    phrases: v.exactOptional(few(whole(1, 99), 99)),
  }),
]);

const Form = v.strictObject({
  ...chords,
  ...lying,
  drills: few(v.union([v.picklist(KIND_NAMES), Apart]), 100),
  marks: v.record(v.pipe(v.string(), v.maxLength(LONGEST_ID)), v.picklist([1, 2, 3, 4, 5])),
});

const Document = v.object({ lesson: v.unknown(), form: Form, entry: v.unknown() });

/** What the device keeps of a draft. */
export interface DraftDocument {
  readonly lesson: DeckDocument;
  readonly form: unknown;
  readonly entry: unknown;
}

/** Inverts `readDraft`, but for what phrases say that the lesson's key and instrument have not. */
export function writeDraft(draft: Draft): DraftDocument {
  const { degrees, sizes, strings, frets, drills, marks, entry, title } = draft;
  const lesson = writeDeck(deckOf({ ...draft, drills: [], marks: {} }));
  return {
    lesson: { ...lesson, title },
    form: { degrees, sizes, strings, frets, drills, marks },
    entry: entry && writeEntry(entry, draft.key),
  };
}

/** The draft that a document holds, or what is wrong with it. */
export function readDraft(document: unknown): { readonly draft: Draft } | Fault {
  const read = v.safeParse(Document, document);
  if (!read.success) return { fault: 'it is not whole.' };
  const { lesson, form, entry } = read.output;
  const deck = readDeck(lesson);
  if ('fault' in deck) return deck;
  const { instrument, key, title, note, lessonDay, phrases } = deck.deck;
  const draft: Draft = {
    ...form,
    marks: form.marks as Marks,
    instrument,
    key,
    title,
    note,
    lessonDay,
    phrases: phrases.map(({ rulings = [], ...phrase }) => ({ phrase, rulings })),
    entry: readEntry(entry, key),
  };
  return { draft };
}
