import { signal } from '@preact/signals';
import { itemsOf } from '../../cards/index.ts';
import { CONTOURS, type Deck, type Drill, type KindName, type Marks } from '../../decks/deck.ts';
import { GUITAR, type Instrument } from '../../neck/instrument.ts';
import type { Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { keyLabel } from '../../theory/naming.ts';

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
}

const ALL_DEGREES = [1, 2, 3, 4, 5, 6, 7];

/** The plain lesson that a teacher starts from. */
export const draft = signal<Draft>({
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
});

export function change(part: Partial<Draft>): void {
  draft.value = { ...draft.value, ...part };
}

/** Quarter notes a minute of phrases to be heard. */
const TEMPO = 72;

/** The title that stands where the teacher gives none. */
export function usualTitle(key: Key): string {
  return `Arpeggios of ${keyLabel(key, 'english')}`;
}

/** The deck that a draft makes. */
export function deckOf(made: Draft): Deck {
  const { instrument, key, degrees, sizes, frets, title, note, lessonDay } = made;
  const strings = made.strings.map((set) => set.split('-').map(Number));
  const drills = made.kinds.map((kind): Drill => {
    if (kind === 'trace') return { kind, degrees, sizes, contours: CONTOURS, tempo: TEMPO };
    return { kind, degrees, sizes, strings, frets };
  });
  const deck: Deck = {
    title: title.trim() || usualTitle(key),
    note: note.trim(),
    lessonDay,
    instrument,
    key,
    drills,
    phrases: [],
  };
  const marks = itemsOf(deck).flatMap(({ id }) => {
    const mark = made.marks[id] ?? 3;
    return mark === 3 ? [] : [[id, mark] as const];
  });
  return marks.length === 0 ? deck : { ...deck, marks: Object.fromEntries(marks) };
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
