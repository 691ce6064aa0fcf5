import { itemsOf } from '../cards/index.ts';
import {
  CONTOURS,
  isPhraseDrill,
  isPhraseKind,
  type Deck,
  type Drill,
  type KindName,
  type Marks,
  KIND_NAMES,
  type TaughtPhrase,
} from '../decks/deck.ts';
import { isKindOf } from '../decks/kinds.ts';
import { rulingsIn } from '../decks/rulings.ts';
import type { HandChoice } from '../neck/choice.ts';
import { fretsLeft, GUITAR, type Instrument } from '../neck/instrument.ts';
import { midiAt } from '../neck/place.ts';
import type { Ruling } from '../theory/analysis/ruling.ts';
import type { Size } from '../theory/chord.ts';
import { type Key } from '../theory/key.ts';
import { spell } from '../theory/spell.ts';
import { keyLabel } from '../theory/naming.ts';
import type { Phrase } from '../theory/phrase.ts';
import { DEGREES } from '../theory/scale.ts';
import type { Entry } from './entry.ts';
import type { Taken } from './finding.ts';

/** A phrase of the lesson, and what the teacher ruled that it outlines. */
export interface MadePhrase {
  readonly phrase: Phrase;
  readonly rulings: readonly Ruling[];
  /** How it lies on the neck, if the teacher says so. */
  readonly hand?: HandChoice;
}

/** The choices of the form that its drills follow together. */
export interface Together {
  /** 1 to 7. */
  readonly degrees: readonly number[];
  readonly sizes: readonly Size[];
  /** String sets, each from the highest string number down. */
  readonly strings: readonly (readonly number[])[];
  readonly frets: readonly [number, number];
}

/** A drill of the lesson: a kind alone follows the form's choices, any other is tuned apart. */
export type MadeDrill = KindName | Drill;

/** A lesson that is being made. */
export interface Draft extends Together {
  readonly instrument: Instrument;
  readonly key: Key;
  /** In the order in which their new items are asked. */
  readonly drills: readonly MadeDrill[];
  /** Empty: the title follows the key. */
  readonly title: string;
  readonly note: string;
  readonly lessonDay: string | null;
  /** Of items of this lesson or of others: those of this lesson count. */
  readonly marks: Marks;
  readonly phrases: readonly MadePhrase[];
  /** The phrase that is being written, if one is. */
  readonly entry: Entry | null;
  /** What was taken from reports on a lesson before; null where it was made otherwise. */
  readonly taken: Taken | null;
}

/** The plain lesson that a teacher starts from. */
export const PLAIN_DRAFT: Draft = {
  instrument: GUITAR,
  key: { tonic: 'Bb', scale: 'major' },
  degrees: DEGREES,
  sizes: ['triad'],
  strings: [
    [5, 4],
    [4, 3],
  ],
  frets: [1, 8],
  drills: ['spot', 'place', 'trace'],
  title: '',
  note: '',
  lessonDay: null,
  marks: {},
  phrases: [],
  entry: null,
  taken: null,
};

/** Whether nothing has been chosen yet. */
export function isPlain(made: Draft): boolean {
  return made === PLAIN_DRAFT;
}

/** Quarter notes a minute of phrases to be heard. */
export const TEMPO = 72;

/** A drill of time as it is begun: triplets, a click on every beat at first, then gone for every second bar. */
const KEPT_EVEN = {
  figures: ['triplets'],
  tempos: [60, 72, 84, 96, 108, 120],
  clicks: ['beat', 'gone'],
} as const;

/** The title that stands where the teacher gives none. */
export function usualTitle(key: Key): string {
  return `Arpeggios of ${keyLabel(key, 'english')}`;
}

export function titleOf({ title, key }: Pick<Draft, 'title' | 'key'>): string {
  return title.trim() || usualTitle(key);
}

/** Whether a drill follows the form's choices. */
export function isTogether(made: MadeDrill): made is KindName {
  return typeof made === 'string';
}

/** The drill that is meant: for a kind alone, what the form's choices make of it. */
export function drillOf(made: MadeDrill, together: Together): Drill {
  if (!isTogether(made)) return made;
  const { degrees, sizes, strings, frets } = together;
  if (isKindOf('neck', made)) return { kind: made, degrees, sizes, strings, frets };
  if (isKindOf('ear', made) || isKindOf('echoed', made))
    return { kind: made, degrees, sizes, contours: CONTOURS, tempo: TEMPO };
  if (isKindOf('played', made))
    return { kind: made, degrees, sizes, strings, frets, ways: ['up', 'down'] };
  if (isKindOf('time', made)) return { kind: made, ...KEPT_EVEN };
  return { kind: made };
}

/** The deck that a draft makes. */
export function deckOf(made: Draft): Deck {
  const { instrument, key, note, lessonDay } = made;
  const deck: Deck = {
    title: titleOf(made),
    note: note.trim(),
    lessonDay,
    instrument,
    key,
    drills: standing(made).map((drill) => drillOf(drill, made)),
    phrases: made.phrases.map((one) => taught(one, made)),
  };
  const isMarked = Object.values(made.marks).some((mark) => mark !== 3);
  if (!isMarked) return deck;
  const marks = itemsOf(deck).flatMap(({ id }) => {
    const mark = made.marks[id] ?? 3;
    return mark === 3 ? [] : [[id, mark] as const];
  });
  return marks.length === 0 ? deck : { ...deck, marks: Object.fromEntries(marks) };
}

/** The drills of the lesson: those from its phrases only while it has any. */
export function standing({ drills, phrases }: Draft): readonly MadeDrill[] {
  return drills.filter((drill) => phrases.length > 0 || !isTogether(drill) || !isPhraseKind(drill));
}

/** A phrase as the deck has it: without what was said of it in another key or on another instrument. */
function taught({ phrase, rulings, hand }: MadePhrase, { key, instrument }: Draft): TaughtPhrase {
  const notes = phrase.notes.map(({ place, ...note }) =>
    place && place.fret <= fretsLeft(instrument) && midiAt(instrument, place) === note.midi
      ? { ...note, place }
      : note,
  );
  const held = rulingsIn(key, rulings);
  return {
    tempo: phrase.tempo,
    notes,
    ...(held.length > 0 && { rulings: held }),
    ...(hand && { hand }),
  };
}

/** The drills with these kinds following the form: those that go leave the order, one that comes in takes its usual place. */
export function withKinds(
  drills: readonly MadeDrill[],
  kinds: readonly KindName[],
): readonly MadeDrill[] {
  const left = drills.filter((drill) => !isTogether(drill) || kinds.includes(drill));
  return kinds.reduce((all, kind) => {
    if (all.includes(kind)) return all;
    const later = KIND_NAMES.slice(KIND_NAMES.indexOf(kind));
    const at = all.findIndex((drill) => isTogether(drill) && later.includes(drill));
    return all.toSpliced(at < 0 ? all.length : at, 0, kind);
  }, left);
}

/** A deck's phrase as a lesson in the making has it. */
export function madeOf({ rulings = [], hand, ...phrase }: TaughtPhrase): MadePhrase {
  return { phrase, rulings, ...(hand && { hand }) };
}

/** Drills that go on with the phrases they are on, counted from 1, by the new numbers of those, counted from 0. */
export function drillsOn(
  drills: readonly MadeDrill[],
  number: (of: number) => number | null,
): readonly MadeDrill[] {
  return drills.map((drill) => {
    if (typeof drill === 'string' || !isPhraseDrill(drill) || !drill.phrases) return drill;
    const phrases = drill.phrases.flatMap((one) => {
      const now = number(one - 1);
      return now === null ? [] : [now + 1];
    });
    return { ...drill, phrases };
  });
}

/** The choices of a lesson in another key: its phrases keep their notes, named as that key names them. */
export function inKey(key: Key, phrases: readonly MadePhrase[]): Pick<Draft, 'key' | 'phrases'> {
  const named = phrases.map(({ phrase, ...ruled }) => ({
    phrase: {
      ...phrase,
      notes: phrase.notes.map((note) => ({ ...note, name: spell(key, note.midi) })),
    },
    ...ruled,
  }));
  return { key, phrases: named };
}

/** The choices of a lesson on another instrument: the string sets and frets that it has. */
export function onInstrument(made: Draft, instrument: Instrument): Partial<Draft> {
  const fit = <T extends Pick<Together, 'strings' | 'frets'>>(one: T): T => ({
    ...one,
    strings: stringsOn(instrument, one.strings),
    frets: fretsOn(instrument, one.frets),
  });
  return {
    instrument,
    ...fit({ strings: made.strings, frets: made.frets }),
    drills: made.drills.map((drill) =>
      isTogether(drill) || !('strings' in drill) ? drill : fit(drill),
    ),
  };
}

/** The string sets that the instrument has; where it has none of them, its two lowest strings. */
function stringsOn({ tuning }: Instrument, sets: Together['strings']): Together['strings'] {
  const there = sets.filter((set) => set.every((string) => string <= tuning.length));
  return there.length > 0 || sets.length === 0 ? there : [[tuning.length, tuning.length - 1]];
}

function fretsOn(instrument: Instrument, [low, high]: Together['frets']): [number, number] {
  const end = Math.min(high, fretsLeft(instrument));
  return [Math.min(low, Math.max(0, end - 2)), end];
}
