import { effect, signal } from '@preact/signals';
import { itemsOf } from '../../cards/index.ts';
import { CONTOURS, type Deck, type Drill, type KindName, type Marks } from '../../decks/deck.ts';
import { GUITAR, type Instrument } from '../../neck/instrument.ts';
import type { Ruling } from '../../theory/analysis/ruling.ts';
import type { Size } from '../../theory/chord.ts';
import { spell, type Key } from '../../theory/key.ts';
import { keyLabel } from '../../theory/naming.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { formerEntry } from '../phrases/document.ts';
import { keptEntry, type Entry } from '../phrases/entry.ts';
import { trouble } from '../trouble.ts';

/** A phrase of the lesson, and what the teacher ruled that it outlines. */
export interface MadePhrase {
  readonly phrase: Phrase;
  readonly rulings: readonly Ruling[];
}

/** A lesson that is being made. */
export interface Draft {
  readonly instrument: Instrument;
  readonly key: Key;
  /** 1 to 7. */
  readonly degrees: readonly number[];
  readonly sizes: readonly Size[];
  readonly kinds: readonly KindName[];
  /** String sets as they are chosen: `5-4`. */
  readonly strings: readonly string[];
  readonly frets: readonly [number, number];
  /** Empty: the title follows the key. */
  readonly title: string;
  readonly note: string;
  readonly lessonDay: string | null;
  /** Of items of this lesson or of others: those of this lesson count. */
  readonly marks: Marks;
  readonly phrases: readonly MadePhrase[];
  /** The phrase that is being written, if one is. */
  readonly entry: Entry | null;
}

const ALL_DEGREES = [1, 2, 3, 4, 5, 6, 7];

/** The plain lesson that a teacher starts from. */
const PLAIN: Draft = {
  instrument: GUITAR,
  key: { tonic: 'Bb', scale: 'major' },
  degrees: ALL_DEGREES,
  sizes: ['triad'],
  kinds: ['spot', 'place', 'trace'],
  strings: ['5-4', '4-3'],
  frets: [1, 8],
  title: '',
  note: '',
  lessonDay: null,
  marks: {},
  phrases: [],
  entry: null,
};

/** Under this name the device keeps the draft; another number where its form changes. */
const KEPT = 'skipwise draft 1';

/** The lesson in the making, as it was left. */
export const draft = signal<Draft>(keptDraft());

function keptDraft(): Draft {
  try {
    const kept = localStorage.getItem(KEPT);
    if (!kept) return PLAIN;
    const made = { ...PLAIN, ...(JSON.parse(kept) as Partial<Draft>) };
    return made.entry && !('sketch' in made.entry)
      ? { ...made, entry: formerEntry(made.entry) }
      : made;
  } catch {
    // No store, as where cookies are blocked, or nothing readable in it: one starts from the plain lesson.
    return PLAIN;
  }
}

effect(() => {
  const kept = draft.value;
  try {
    if (kept === PLAIN) localStorage.removeItem(KEPT);
    else {
      const entry = kept.entry && keptEntry(kept.entry);
      localStorage.setItem(KEPT, JSON.stringify({ ...kept, entry }));
    }
  } catch {
    if (kept !== PLAIN)
      trouble.value =
        'This browser keeps nothing for the page: share the lesson’s link before you close it.';
  }
});

/** Whether nothing has been chosen yet. */
export function isPlain(made: Draft): boolean {
  return made === PLAIN;
}

/** Lets go of the draft and starts from the plain lesson. */
export function beginAnew(): void {
  draft.value = PLAIN;
}

export function change(part: Partial<Draft>): void {
  draft.value = { ...draft.value, ...part };
}

/** Quarter notes a minute of phrases to be heard. */
export const TEMPO = 72;

/** The title that stands where the teacher gives none. */
export function usualTitle(key: Key): string {
  return `Arpeggios of ${keyLabel(key, 'english')}`;
}

export function titleOf({ title, key }: Draft): string {
  return title.trim() || usualTitle(key);
}

/** The deck that a draft makes. */
export function deckOf(made: Draft): Deck {
  const { instrument, key, degrees, sizes, frets, note, lessonDay } = made;
  const strings = made.strings.map((set) => set.split('-').map(Number));
  const drills = made.kinds.map((kind): Drill => {
    if (kind === 'trace') return { kind, degrees, sizes, contours: CONTOURS, tempo: TEMPO };
    return { kind, degrees, sizes, strings, frets };
  });
  const deck: Deck = {
    title: titleOf(made),
    note: note.trim(),
    lessonDay,
    instrument,
    key,
    drills,
    phrases: made.phrases.map(({ phrase }) => spelledIn(key, phrase)),
  };
  const marks = itemsOf(deck).flatMap(({ id }) => {
    const mark = made.marks[id] ?? 3;
    return mark === 3 ? [] : [[id, mark] as const];
  });
  return marks.length === 0 ? deck : { ...deck, marks: Object.fromEntries(marks) };
}

/** The same phrase where the key has been changed since it was written. */
function spelledIn(key: Key, { tempo, notes }: Phrase): Phrase {
  return { tempo, notes: notes.map((note) => ({ ...note, name: spell(key, note.midi) })) };
}

/** What keeps a draft from being a lesson, as a sentence; null where nothing does. */
export function draftFault(made: Draft): string | null {
  if (made.degrees.length === 0) return 'Choose at least one degree.';
  if (made.sizes.length === 0) return 'Choose at least one size of chord.';
  if (made.kinds.length === 0) return 'Choose at least one kind of card.';
  const onNeck = made.kinds.some((kind) => kind !== 'trace');
  if (onNeck && made.strings.length === 0) return 'Choose at least one string set.';
  return null;
}
