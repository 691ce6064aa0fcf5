import type { Articulation, Phrase, PhraseNote } from './phrase.ts';
import { add, beats, compare, subtract, type Beats } from './rhythm.ts';

/** A note of a phrase in the making: instead of when it begins, how long until the next one does. */
interface SketchNote extends Omit<PhraseNote, 'at'> {
  /** From its onset to the next one's, above 0: longer than the note where a rest follows, shorter where it rings on. */
  readonly until: Beats;
}

/**
 * A phrase in the making. Its notes follow one another whatever is done to them, because none knows when it begins;
 * unlike a phrase it can end in a rest, which passes before the next note is added.
 */
export interface Sketch {
  /** Quarter notes a minute. */
  readonly tempo: number;
  /** What passes before the first note. */
  readonly lead: Beats;
  readonly notes: readonly SketchNote[];
}

/** A note to be written, with its length. */
type NewNote = Pick<PhraseNote, 'midi' | 'name' | 'place' | 'length'>;

const NOTHING = beats(0);

/** Nothing written yet. */
export function emptySketch(tempo: number): Sketch {
  return { tempo, lead: NOTHING, notes: [] };
}

export function sketchOf({ tempo, notes }: Phrase): Sketch {
  return {
    tempo,
    lead: notes[0]?.at ?? NOTHING,
    notes: notes.map(({ at, ...note }, i) => {
      const next = notes[i + 1];
      return { ...note, until: next ? subtract(next.at, at) : note.length };
    }),
  };
}

/** The phrase as far as it is written; a rest at its end is not part of it. Inverts `sketchOf`. */
export function phraseOf({ tempo, lead, notes }: Sketch): Phrase {
  let next = lead;
  return {
    tempo,
    notes: notes.map(({ until, ...note }) => {
      const at = next;
      next = add(at, until);
      return { ...note, at };
    }),
  };
}

/** What passes after a note in silence, or before the first where `index` is −1. */
export function restAfter({ lead, notes }: Sketch, index: number): Beats {
  const note = notes[index];
  if (!note) return lead;
  const silence = subtract(note.until, note.length);
  return silence.n > 0 ? silence : NOTHING;
}

/** Writes a note so that it is the one with this index; those from there on come later by its length. */
export function insert(sketch: Sketch, index: number, note: NewNote): Sketch {
  const { length } = note;
  return withNotes(sketch, sketch.notes.toSpliced(index, 0, { ...note, until: length }), index);
}

/** Takes a note out with the rest after it; what follows comes earlier. */
export function remove(sketch: Sketch, index: number): Sketch {
  return withNotes(sketch, sketch.notes.toSpliced(index, 1), index);
}

/** Another pitch or place for a note. Without a place, it is played wherever that costs the hand least. */
export function move(
  sketch: Sketch,
  index: number,
  { midi, name, place }: Pick<PhraseNote, 'midi' | 'name' | 'place'>,
): Sketch {
  return changed(sketch, index, (note) => ({
    ...withoutPlace(note),
    midi,
    name,
    ...(place && { place }),
  }));
}

/** Puts a note behind the next one, each with its length and the rest after it; at the end nothing changes. */
export function movedLater(sketch: Sketch, index: number): Sketch {
  const { notes } = sketch;
  const [one, next] = [notes[index], notes[index + 1]];
  if (!one || !next) return sketch;
  return withNotes(sketch, notes.with(index, next).with(index + 1, one), index, index + 1);
}

/** Another length for a note, above 0; the rest after it stays as it is. */
export function lengthen(sketch: Sketch, index: number, length: Beats): Sketch {
  return changed(sketch, index, (note) => ({
    ...note,
    length,
    until: add(length, restAfter(sketch, index)),
  }));
}

/** The rest after a note, or before the first where `index` is −1. */
export function rest(sketch: Sketch, index: number, length: Beats): Sketch {
  if (index < 0) return { ...sketch, lead: length };
  return changed(sketch, index, (note) => ({ ...note, until: add(note.length, length) }));
}

/** Another way to reach a note, or none. An articulation that cannot be is left out: see `articulationFault`. */
export function articulate(sketch: Sketch, index: number, how: Articulation | null): Sketch {
  return changed(sketch, index, (note) => {
    const { articulation: _, ...bare } = note;
    return how ? { ...bare, articulation: how } : bare;
  });
}

/** A note whose place is found, or every one. */
export function unplace(sketch: Sketch, index?: number): Sketch {
  const notes = sketch.notes.map((note, i) =>
    index === undefined || index === i ? withoutPlace(note) : note,
  );
  return { ...sketch, notes };
}

function withoutPlace(note: SketchNote): SketchNote {
  const { place: _, ...bare } = note;
  return bare;
}

/** All notes higher or lower by octaves, their places to be found. */
export function byOctaves(sketch: Sketch, octaves: number): Sketch {
  const bare = unplace(sketch);
  return {
    ...bare,
    notes: bare.notes.map((note) => ({ ...note, midi: note.midi + 12 * octaves })),
  };
}

/** What keeps a note from being reached from the one before it so, as a sentence; null where nothing does. */
export function articulationFault(
  before: Pick<PhraseNote, 'midi' | 'place'> | undefined,
  note: Pick<PhraseNote, 'midi' | 'place'>,
  how: Articulation,
): string | null {
  if (!before) return 'The first note is joined to nothing.';
  if (before.place && note.place && before.place.string !== note.place.string)
    return 'The note before it lies on another string.';
  if (before.midi === note.midi) return `A ${how} leads to another pitch.`;
  if (how === 'hammer-on' && before.midi > note.midi) return 'A hammer-on leads to a higher note.';
  if (how === 'pull-off' && before.midi < note.midi) return 'A pull-off leads to a lower note.';
  if (!before.place || !note.place) return null;
  const open = before.place.fret === 0 || note.place.fret === 0;
  return how === 'slide' && open ? 'A slide has no open string.' : null;
}

function changed(sketch: Sketch, index: number, change: (note: SketchNote) => SketchNote): Sketch {
  const note = sketch.notes[index];
  return note ? withNotes(sketch, sketch.notes.with(index, change(note)), index) : sketch;
}

/** Other notes, without the articulations that have become impossible to them: of those from one index to behind another. */
function withNotes(
  sketch: Sketch,
  notes: readonly SketchNote[],
  first: number,
  last = first,
): Sketch {
  const checked = notes.map((note, i) => {
    if (i < first || i > last + 1 || !note.articulation) return note;
    const { articulation: how, ...bare } = note;
    return articulationFault(notes[i - 1], note, how) ? bare : note;
  });
  return { ...sketch, notes: checked };
}

/** Whether two sketches say the same. */
export function sameSketch(a: Sketch, b: Sketch): boolean {
  return (
    a.tempo === b.tempo &&
    compare(a.lead, b.lead) === 0 &&
    a.notes.length === b.notes.length &&
    a.notes.every((note, i) => sameNote(note, b.notes[i]!))
  );
}

function sameNote(a: SketchNote, b: SketchNote): boolean {
  return (
    a.midi === b.midi &&
    a.articulation === b.articulation &&
    a.place?.string === b.place?.string &&
    a.place?.fret === b.place?.fret &&
    compare(a.length, b.length) === 0 &&
    compare(a.until, b.until) === 0
  );
}
