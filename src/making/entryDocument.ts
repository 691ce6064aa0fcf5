/** A phrase that is being written, as the device keeps it. Whatever is read is checked: it may come from a backup's file. */
import * as v from 'valibot';
import { MOST } from '../decks/deck.ts';
import { readRulings, rulingsIn, writeRulings } from '../decks/rulings.ts';
import type { Key } from '../theory/key.ts';
import { ARTICULATIONS } from '../theory/phrase.ts';
import { beats } from '../theory/rhythm.ts';
import { keptEntry, type Entry, type EntryMoment } from './entry.ts';

const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high));
const few = <S extends v.GenericSchema>(each: S, most: number) =>
  v.pipe(v.array(each), v.maxLength(most));

const time = (least: number) =>
  v.pipe(
    v.object({ n: whole(least, 1e7), d: whole(1, 1e5) }),
    v.transform(({ n, d }) => beats(n, d)),
  );

const articulation = v.exactOptional(v.picklist(ARTICULATIONS));

const Note = v.pipe(
  v.object({
    midi: whole(0, 127),
    name: v.pipe(v.string(), v.regex(/^[A-G](#{0,4}|b{0,4})$/)),
    length: time(1),
    until: time(1),
    place: v.exactOptional(v.object({ string: whole(1, 9), fret: whole(0, 27) })),
    articulation,
    join: articulation,
  }),
  // Entries that were kept before articulations were called so have them as `join`.
  v.transform(({ join, ...note }) => (join ? { articulation: join, ...note } : note)),
);

const Step = v.object({
  sketch: v.object({ tempo: whole(1, 1000), lead: time(0), notes: few(Note, MOST.notes) }),
  rulings: few(v.pipe(v.string(), v.maxLength(40)), MOST.notes),
  hand: v.optional(
    v.nullable(v.union([v.picklist(['movable', 'open strings']), whole(1, 24)])),
    null,
  ),
  cursor: v.object({ on: v.picklist(['note', 'gap']), at: whole(0, MOST.notes) }),
});

const Document = v.object({
  ...Step.entries,
  undo: v.array(Step),
  redo: v.array(Step),
  text: v.nullable(v.pipe(v.string(), v.maxLength(20_000))),
  length: time(1),
  of: v.nullable(whole(0, MOST.phrases)),
});

/** What the device keeps of an entry. Rulings on chords of another key are let go. */
export function writeEntry(entry: Entry, key: Key): unknown {
  const kept = keptEntry(entry);
  const written = (step: EntryMoment) => ({
    ...step,
    rulings: writeRulings(rulingsIn(key, step.rulings), key),
  });
  return { ...kept, ...written(kept), undo: kept.undo.map(written), redo: kept.redo.map(written) };
}

/** The entry that a document holds, or null where it holds none that is whole. */
export function readEntry(document: unknown, key: Key): Entry | null {
  const read = v.safeParse(Document, document);
  if (!read.success) return null;
  const step = ({ rulings, ...rest }: v.InferOutput<typeof Step>): EntryMoment => {
    const held = readRulings(rulings, rest.sketch.notes.length, key);
    return { ...rest, rulings: 'fault' in held ? [] : held };
  };
  const { undo, redo, ...now } = read.output;
  return { ...now, ...step(now), undo: undo.map(step), redo: redo.map(step) };
}
