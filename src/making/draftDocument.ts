/**
 * A draft as the device keeps it: the lesson it makes as a deck document, without drills, and beside that what only the
 * form knows. Whatever is read is checked, since it may come from a backup's file.
 */
import * as v from 'valibot';
import { KIND_NAMES, type Drill, type Marks } from '../decks/deck.ts';
import { readDeck, writeDeck, type DeckDocument } from '../decks/document.ts';
import { drillSchema, drillFormOf } from '../decks/drills/index.ts';
import { writeNeck } from '../decks/drills/chordWords.ts';
import { neckEntries } from '../decks/drills/neck.ts';
import type { Fault } from '../decks/envelope.ts';
import { LONGEST_ID } from '../store/review.ts';
import { deckOf, isTogether, madeOf, type Draft } from './draft.ts';
import type { Taken } from './finding.ts';
import { readEntry, writeEntry } from './entryDocument.ts';

/** What a draft's drills may say: the deck's own words, of a lesson that is not whole yet. */
const Drills = v.array(v.union([v.picklist(KIND_NAMES), drillSchema('unfinished')]));

const few = <S extends v.GenericSchema>(each: S) => v.pipe(v.array(each), v.maxLength(100));

const MARKS = v.record(v.pipe(v.string(), v.maxLength(LONGEST_ID)), v.picklist([1, 2, 3, 4, 5]));

const Form = v.strictObject({
  ...neckEntries('unfinished'),
  drills: v.pipe(Drills, v.maxLength(100)),
  marks: MARKS,
});

/** Drafts that were kept before string sets were words have them as numbers: `[5, 4]` for what is now `5-4`. */
function withWordedSets(of: unknown): unknown {
  if (typeof of !== 'object' || of === null) return of;
  if (!('strings' in of) || !Array.isArray(of.strings)) return of;
  const isFormer = (set: unknown): set is number[] =>
    Array.isArray(set) && set.every((string) => typeof string === 'number');
  return { ...of, strings: of.strings.map((set) => (isFormer(set) ? set.join('-') : set)) };
}

function formInWords(form: unknown): unknown {
  const worded = withWordedSets(form);
  if (typeof worded !== 'object' || worded === null) return worded;
  if (!('drills' in worded) || !Array.isArray(worded.drills)) return worded;
  return { ...worded, drills: worded.drills.map(withWordedSets) };
}

const Found = v.object({
  says: v.pipe(v.string(), v.maxLength(200)),
  used: v.boolean(),
  degrees: neckEntries('unfinished').degrees,
  strings: neckEntries('unfinished').strings,
  drills: few(drillSchema('unfinished')),
  marks: MARKS,
});

const From = v.object({
  drills: few(drillSchema('unfinished')),
  findings: few(Found),
});

const Document = v.object({
  lesson: v.unknown(),
  form: v.pipe(v.unknown(), v.transform(formInWords), Form),
  entry: v.unknown(),
  // Drafts that were kept before findings were have none.
  taken: v.optional(v.nullable(From), null),
});

/** What the device keeps of a draft. */
interface DraftDocument {
  readonly lesson: DeckDocument;
  readonly form: unknown;
  readonly entry: unknown;
  readonly taken: unknown;
}

/** Inverts `readDraft`, but for what phrases say that the lesson's key and instrument have not. */
export function writeDraft(draft: Draft): DraftDocument {
  const { drills, marks, entry, title, taken } = draft;
  const written = drills.map((made) => (isTogether(made) ? made : write(made)));
  const lesson = writeDeck(deckOf({ ...draft, drills: [], marks: {} }));
  return {
    lesson: { ...lesson, title },
    form: { ...writeNeck(draft), drills: written, marks },
    entry: entry && writeEntry(entry, draft.key),
    taken: taken && writeTaken(taken),
  };
}

const write = (drill: Drill) => drillFormOf(drill.kind).write(drill);

function writeTaken({ drills, findings }: Taken): unknown {
  return {
    drills: drills.map(write),
    findings: findings.map((one) => ({
      ...one,
      degrees: one.degrees,
      strings: one.strings.map((set) => set.join('-')),
      drills: one.drills.map(write),
    })),
  };
}

/** The draft that a document holds, or what is wrong with it. */
export function readDraft(document: unknown): { readonly draft: Draft } | Fault {
  const read = v.safeParse(Document, document);
  if (!read.success) return { fault: 'it is not whole.' };
  const { lesson, form, entry, taken } = read.output;
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
    phrases: phrases.map(madeOf),
    entry: readEntry(entry, key),
    taken: taken as Taken | null,
  };
  return { draft };
}
