/**
 * What a deck document may hold. Every length is bounded, unknown words are refused, and each message
 * says what to write instead, to stand behind a colon: "Drill 2, frets: give the lowest …".
 */
import * as v from 'valibot';

import { parseChoice } from '../neck/choice.ts';
import type { Instrument } from '../neck/instrument.ts';
import { parseKey } from '../theory/key.ts';
import { MOST, TEMPOS } from './deck.ts';
import { drillSchema } from './drills/index.ts';
import { line, lines, objectFault, readBy, whole } from './fields.ts';
import { readInstrument } from './instrument.ts';
import { MARKED } from './marks.ts';
import { readNotes } from './notes.ts';
import { DOCUMENT_VERSION } from './version.ts';
import { readDay } from './writing.ts';

const VERSIONS = Array.from({ length: DOCUMENT_VERSION }, (_, before) => before + 1);

const PhraseSchema = v.strictObject(
  {
    tempo: whole(...TEMPOS, 'the tempo'),
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
    hand: v.exactOptional(
      v.pipe(
        line(20),
        readBy(parseChoice, 'write how it lies as "movable", "open strings" or "at fret 5"'),
      ),
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
    version: v.picklist(VERSIONS, 'write "version": 1'),
    title: line(MOST.title),
    note: v.optional(lines(MOST.note), ''),
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
      line(MOST.key),
      readBy(parseKey, 'write the tonic and the scale, like "Bb major" or "G minor"'),
    ),
    drills: v.pipe(
      v.array(drillSchema(), 'list the drills in square brackets'),
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
