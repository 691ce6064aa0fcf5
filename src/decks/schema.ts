/**
 * What a deck document may hold. Every length is bounded, unknown words are refused, and each message
 * says what to write instead, to stand behind a colon: "Drill 2, frets: give the lowest …".
 */
import * as v from 'valibot';

import type { Instrument } from '../neck/instrument.ts';
import { SIZES } from '../theory/chord.ts';
import { parseKey } from '../theory/key.ts';
import { CONTOURS, KIND_NAMES, MOST, RHYTHMS, type PhraseKind } from './deck.ts';
import { readInstrument } from './instrument.ts';
import { DEGREES } from '../theory/scale.ts';
import { MARKED } from './marks.ts';
import { readNotes } from './notes.ts';

/** The version of the document that this program writes, and the newest that it reads. */
export const DOCUMENT_VERSION = 1;

const PLAIN = /^[^\p{Cc}\p{Cs}]*$/u;
const PLAIN_LINES = /^(?:[^\p{Cc}\p{Cs}]|\n)*$/u;

/** A schema from a function that reads a value, or gives null for one that it cannot read. */
const readBy = <I, O>(read: (input: I) => O | null, expected: string) =>
  v.rawTransform<I, O>(({ dataset, addIssue, NEVER }) => {
    const output = read(dataset.value);
    if (output !== null) return output;
    addIssue({ message: expected });
    return NEVER;
  });

function whole(lowest: number, highest: number, what: string) {
  const expected = `give ${what} as a whole number from ${lowest} to ${highest}`;
  return v.pipe(
    v.number(expected),
    v.integer(expected),
    v.minValue(lowest, expected),
    v.maxValue(highest, expected),
  );
}

function text(most: number, pattern: RegExp, plain: string) {
  return v.pipe(
    v.string('write it as text in quotes'),
    v.maxLength(most, `shorten it to ${most} characters`),
    v.regex(pattern, plain),
  );
}

const line = (most: number) => text(most, PLAIN, 'write it as plain text on one line');

/** A list of different things, at least one. */
function list<S extends v.GenericSchema>(each: S, most: number, expected: string) {
  return v.pipe(
    v.array(each, expected),
    v.minLength(1, expected),
    v.maxLength(most, `keep it to ${most} entries`),
    v.check((all) => new Set(all.map((one) => JSON.stringify(one))).size === all.length, expected),
  );
}

function oneOf<const T extends readonly string[]>(names: T, what: string) {
  const quoted = names.map((name) => `"${name}"`);
  return v.picklist(names, `choose ${what} from ${quoted.join(', ')}`);
}

const Degrees = v.optional(
  list(whole(1, 7, 'each degree'), 7, 'list different degrees of the key, like [1, 4, 5]'),
  [...DEGREES],
);
const Sizes = list(
  oneOf(SIZES, 'each chord size'),
  SIZES.length,
  'list different chord sizes, like ["triad", "seventh"]',
);
const Strings = list(
  v.pipe(
    line(20),
    readBy(readStringSet, 'write a string set from the highest string number down, like "5-4"'),
  ),
  MOST.stringSets,
  'list different string sets, like ["5-4", "4-3"]',
);
const FRETS = 'give the lowest and the highest fret, like [2, 10]';
const Frets = v.pipe(
  v.strictTuple([whole(0, 27, 'each fret'), whole(0, 27, 'each fret')], FRETS),
  v.check(([low, high]) => low <= high, FRETS),
);
const neckDrill = <const K extends 'spot' | 'place'>(kind: K) =>
  v.strictObject(
    {
      kind: v.literal(kind),
      degrees: Degrees,
      sizes: Sizes,
      strings: Strings,
      frets: Frets,
    },
    objectFault,
  );
const phraseDrill = <const K extends PhraseKind>(kind: K) =>
  v.strictObject(
    {
      kind: v.literal(kind),
      phrases: v.exactOptional(
        list(
          whole(1, MOST.phrases, 'the number of each phrase'),
          MOST.phrases,
          'list the numbers of different phrases, like [1, 3], or leave them out for all',
        ),
      ),
    },
    objectFault,
  );
const DrillSchema = v.variant(
  'kind',
  [
    neckDrill('spot'),
    neckDrill('place'),
    v.strictObject(
      {
        kind: v.literal('trace'),
        degrees: Degrees,
        sizes: Sizes,
        contours: list(
          oneOf(CONTOURS, 'each contour'),
          CONTOURS.length,
          'list different contours, like ["up", "down"]',
        ),
        tempo: whole(30, 240, 'the tempo'),
        rhythm: v.exactOptional(oneOf(RHYTHMS, 'the rhythm')),
      },
      objectFault,
    ),
    phraseDrill('outline'),
    phraseDrill('follow'),
    phraseDrill('order'),
    phraseDrill('vary'),
    phraseDrill('fill'),
  ],
  `give a kind: ${KIND_NAMES.map((name) => `"${name}"`).join(', ')}`,
);

const PhraseSchema = v.strictObject(
  {
    tempo: whole(30, 240, 'the tempo'),
    notes: v.pipe(
      v.array(line(60), 'list the notes, like ["Bb3 for 1/3 on 3/3", "D4 on 2/3"]'),
      v.minLength(1, 'give at least one note'),
      v.maxLength(MOST.notes, `keep it to ${MOST.notes} notes, or make two phrases of it`),
      v.rawTransform(({ dataset, addIssue, NEVER }) => {
        const notes = readNotes(dataset.value);
        if (!('fault' in notes)) return notes;
        addIssue({ message: notes.fault });
        return NEVER;
      }),
    ),
    outline: v.exactOptional(
      v.pipe(
        v.array(line(20), 'list what its notes outline, like ["1-3 ii7", "4-6 V"]'),
        v.maxLength(MOST.notes, `keep it to ${MOST.notes} entries`),
      ),
    ),
  },
  objectFault,
);

const MarksSchema = v.pipe(
  v.record(
    v.pipe(
      v.string(),
      v.regex(MARKED, 'name each item like "spot 7 triad 3-2 1-7" or "trace 5 triad turn 72"'),
    ),
    v.picklist([1, 2, 3, 4, 5], 'give each mark as a whole number from 1, easy, to 5, hard'),
    'write the marks in curly brackets, like { "spot 7 triad 3-2 1-7": 5 }',
  ),
  v.check((marks) => Object.keys(marks).length <= MOST.marks, `keep it to ${MOST.marks} marks`),
);

// What makes sense of an instrument is for `neck` to say: here only that the words are of the right sort.
const InstrumentSchema = v.pipe(
  v.lazy((input) =>
    typeof input === 'string'
      ? v.pipe(
          line(40),
          v.transform((name) => ({ name })),
        )
      : v.strictObject(
          {
            name: line(40),
            tuning: v.optional(
              v.pipe(
                v.array(line(8), 'list the open strings from the lowest, like ["E2", "A2"]'),
                v.maxLength(9, 'give at most 9 strings'),
              ),
            ),
            frets: v.optional(v.number('give the number of frets')),
            scaleLength: v.optional(v.number('give the length of the strings in mm')),
            capo: v.optional(v.number('give the fret that the capo lies on')),
            leftHanded: v.optional(v.boolean('write true or false')),
          },
          objectFault,
        ),
  ),
  v.rawTransform(({ dataset, addIssue, NEVER }): Instrument => {
    const instrument = readInstrument(dataset.value);
    if (!('fault' in instrument)) return instrument;
    addIssue({ message: instrument.fault });
    return NEVER;
  }),
);

/** The whole document; its output is a deck with the version beside it. */
export const Document = v.strictObject(
  {
    version: v.literal(DOCUMENT_VERSION, `write "version": ${DOCUMENT_VERSION}`),
    title: line(MOST.title),
    note: v.optional(text(MOST.note, PLAIN_LINES, 'write it as plain text'), ''),
    lessonDay: v.optional(
      v.nullable(
        v.pipe(
          line(10),
          readBy(readDay, 'write the day as year, month and day, like "2026-12-01"'),
        ),
      ),
      null,
    ),
    instrument: v.optional(InstrumentSchema, 'guitar'),
    key: v.pipe(
      line(40),
      readBy(parseKey, 'write the tonic and the scale, like "Bb major" or "G minor"'),
    ),
    drills: v.pipe(
      v.array(DrillSchema, 'list the drills in square brackets'),
      v.maxLength(MOST.drills, `keep it to ${MOST.drills} drills`),
    ),
    phrases: v.optional(
      v.pipe(
        v.array(PhraseSchema, 'list the phrases in square brackets'),
        v.maxLength(MOST.phrases, `keep it to ${MOST.phrases} phrases`),
      ),
      [],
    ),
    marks: v.exactOptional(MarksSchema),
  },
  objectFault,
);

/** Said of an object with a word too many or too few; its path ends with that word. */
function objectFault(issue: v.StrictObjectIssue): string {
  return issue.expected === 'never'
    ? 'take this out: nothing here has that name'
    : issue.received === 'undefined'
      ? 'add this'
      : 'write it in curly brackets, { }';
}

function readStringSet(written: string): readonly number[] | null {
  if (!/^[1-9](?:[-–][1-9]){0,8}$/.test(written)) return null;
  const strings = written.split(/[-–]/).map(Number);
  return strings.every((string, i) => i === 0 || string < (strings[i - 1] ?? 0)) ? strings : null;
}

/** A day that the calendar has. */
function readDay(written: string): string | null {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(written) ? Date.parse(`${written}T00:00Z`) : NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(written) ? written : null;
}
