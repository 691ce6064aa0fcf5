import { fretsLeft } from '../../neck/instrument.ts';
import { midiAt, placesOf, type Place } from '../../neck/place.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Shape } from '../../neck/shapes.ts';
import { chordOn, type Chord, type Member } from '../../theory/chord.ts';
import { degreeOf } from '../../theory/key.ts';
import { chroma, pitchClass, type NoteName } from '../../theory/note.ts';
import { intervalLabel, noteLabel, type Naming } from '../../theory/naming.ts';
import { scaleNotes } from '../../theory/scale.ts';
import { bends, fingersOf, shapeOf } from './shape.ts';
import { range, type View } from './view.ts';

/** The arpeggio that is looked at, and the one it was stepped to from; one shape is not compared. */
export function chordsOf({ key, size, degree, from, where }: View): {
  chord: Chord | null;
  former: Chord | null;
} {
  return {
    chord: degree === null ? null : chordOn(key, degree, size),
    former:
      degree === null || from === null || (where && 'shape' in where)
        ? null
        : chordOn(key, from, size),
  };
}

/**
 * The view's dots: the scale with its tonic square, or the arpeggio; after a step also the notes that went, and those
 * that came are told from those that stayed. By strings from the highest number down, each from its lowest fret up.
 */
export function viewDots(view: View, naming: Naming): NeckDot[] {
  const shape = shapeOf(view);
  if (shape) return shapeDots(view, shape, naming);
  const { chord, former } = chordsOf(view);
  const notes = chord ? chord.notes : scaleNotes(view.key);
  const here = notes.flatMap((note, index) => {
    const member = chord ? chord.members[index]! : index === 0 ? 1 : undefined;
    const comes = former && !former.notes.includes(note);
    return placesIn(view, note).map((place) => ({
      ...place,
      ...labels(view, note, member, naming),
      ...(comes && { look: 'comes' as const, moved: 'comes' }),
    }));
  });
  const gone = (former?.notes ?? [])
    .filter((note) => !notes.includes(note))
    .flatMap((note) =>
      placesIn(view, note).map((place) => ({ ...place, ...gonePart(view, note) })),
    );
  return [...here, ...gone].toSorted((a, b) => b.string - a.string || a.fret - b.fret);
}

/** A shape's dots; where it was bent on its way across the strings, also where they would lie unbent. */
function shapeDots(view: View, shape: Shape, naming: Naming): NeckDot[] {
  const bent = bends(view);
  const { fingers } = fingersOf(view.instrument, chordsOf(view).chord!, shape);
  const here = shape.places.map(({ string, fret, note, member }, i): NeckDot => {
    const isBent = bent?.bent.some((place) => place.string === string && place.fret === fret);
    return {
      string,
      fret,
      ...labels(view, note, member, naming),
      ...(view.shown === 'fingers' && { text: String(fingers[i]), said: `finger ${fingers[i]}` }),
      ...(isBent && { look: 'bent', moved: 'bent to here' }),
    };
  });
  const unbent = (bent?.unbent ?? []).map((place): NeckDot => ({
    ...place,
    text: '',
    look: 'unbent',
    moved: 'here if nothing bent',
  }));
  return [...here, ...unbent].toSorted((a, b) => b.string - a.string || a.fret - b.fret);
}

function placesIn({ instrument, where }: View, note: NoteName): Place[] {
  const all = range(1, instrument.tuning.length);
  const strings = where && 'strings' in where ? where.strings : all;
  const frets = where && 'frets' in where ? where.frets : ([0, fretsLeft(instrument)] as const);
  return placesOf(instrument, chroma(note), strings, frets);
}

/** What a dot says, to the eye and to a screen reader. With nothing shown only the root's shape is left. */
function labels(view: View, note: NoteName, member: Member | undefined, naming: Naming) {
  const { key, shown } = view;
  if (shown === 'nothing') return { text: '', ...(member === 1 && { member }) };
  const dot = { note, degree: degreeOf(key, note)!, ...(member && { member }) };
  if (shown === 'names' || shown === 'fingers')
    return { ...dot, text: noteLabel(note, naming, key) };
  if (shown === 'degrees') {
    const text = noteLabel(note, 'degrees', key);
    return { ...dot, text, said: `degree ${text}` };
  }
  const text = view.degree === null ? intervalLabel(note, key) : aboveRoot(view, note, member!);
  return { ...dot, text, said: text };
}

/** The interval of a member above its chord's root, beyond the octave as it is stacked: `m3`, `M9`. */
function aboveRoot({ key, degree, size }: View, note: NoteName, member: Member): string {
  const { root } = chordOn(key, degree!, size);
  return intervalLabel(note, { tonic: root, scale: key.scale })[0]! + member;
}

function gonePart({ key, shown }: View, note: NoteName) {
  const gone = { text: '', look: 'goes' as const, moved: 'goes' };
  return shown === 'nothing' ? gone : { ...gone, note, degree: degreeOf(key, note)! };
}

/** A note of a run: what sounds, and where it lies if it has a dot. */
interface RunNote {
  readonly midi: number;
  readonly place: Place | null;
}

/** The shape from its lowest note up; or the scale or arpeggio upwards from the lowest root that has a dot, each note on the dot nearest to the one before. */
export function viewRun(view: View): RunNote[] {
  const shape = shapeOf(view);
  if (shape) return shape.places.map((place) => ({ midi: midiAt(view.instrument, place), place }));
  const { chord } = chordsOf(view);
  const notes = chord ? chord.notes : [...scaleNotes(view.key), view.key.tonic];
  const { instrument } = view;
  const pitchOf = (place: Place) => midiAt(instrument, place);
  const byPitch = (a: Place, b: Place) => pitchOf(a) - pitchOf(b);
  const [start] = placesIn(view, notes[0]!).toSorted(byPitch);
  if (!start) return [];
  const run: RunNote[] = [];
  let last = start;
  let midi = pitchOf(start);
  for (const note of notes) {
    if (run.length > 0) midi += pitchClass(chroma(note) - midi);
    const near = (place: Place) =>
      Math.abs(place.fret - last.fret) + 2 * Math.abs(place.string - last.string);
    const [place = null] = placesIn(view, note)
      .filter((other) => pitchOf(other) === midi)
      .toSorted((a, b) => near(a) - near(b));
    run.push({ midi, place });
    last = place ?? last;
  }
  return run;
}

/** The run and the way back, of the notes that have a place. */
export function upAndDown(view: View): { readonly midi: number; readonly place: Place }[] {
  const run = viewRun(view).flatMap(({ midi, place }) => (place ? [{ midi, place }] : []));
  return [...run, ...run.slice(0, -1).toReversed()];
}
