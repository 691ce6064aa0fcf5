import { signal } from '@preact/signals';
import { CONTOURS, type Deck, type Drill, type KindName } from '../../decks/deck.ts';
import { GUITAR } from '../../neck/instrument.ts';
import type { Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { keyLabel } from '../../theory/naming.ts';

/** A lesson that is being made. */
export interface Draft {
  readonly key: Key;
  readonly sizes: readonly Size[];
  readonly kinds: readonly KindName[];
  /** String sets as they are chosen: `5-4`. */
  readonly strings: readonly string[];
  readonly frets: readonly [number, number];
  /** Empty: the title follows the key. */
  readonly title: string;
  readonly note: string;
  readonly lessonDay: string | null;
}

/** The plain lesson that a teacher starts from. */
export const draft = signal<Draft>({
  key: { tonic: 'Bb', scale: 'major' },
  sizes: ['triad'],
  kinds: ['spot', 'place', 'trace'],
  strings: ['5-4', '4-3'],
  frets: [1, 8],
  title: '',
  note: '',
  lessonDay: null,
});

export function change(part: Partial<Draft>): void {
  draft.value = { ...draft.value, ...part };
}

/** Quarter notes a minute of phrases to be heard. */
const TEMPO = 72;

const ALL_DEGREES = [1, 2, 3, 4, 5, 6, 7];

/** The title that stands where the teacher gives none. */
export function usualTitle(key: Key): string {
  return `Arpeggios of ${keyLabel(key, 'english')}`;
}

/** The deck that a draft makes. */
export function deckOf(made: Draft): Deck {
  const { key, sizes, frets, title, note, lessonDay } = made;
  const strings = made.strings.map((set) => set.split('-').map(Number));
  const drills = made.kinds.map((kind): Drill => {
    if (kind === 'trace')
      return { kind, degrees: ALL_DEGREES, sizes, contours: CONTOURS, tempo: TEMPO };
    return { kind, degrees: ALL_DEGREES, sizes, strings, frets };
  });
  return {
    title: title.trim() || usualTitle(key),
    note: note.trim(),
    lessonDay,
    instrument: GUITAR,
    key,
    drills,
    phrases: [],
  };
}

/** What keeps a draft from being a lesson, as a sentence; null where nothing does. */
export function draftFault(made: Draft): string | null {
  if (made.sizes.length === 0) return 'Choose at least one size of chord.';
  if (made.kinds.length === 0) return 'Choose at least one kind of card.';
  const onNeck = made.kinds.some((kind) => kind !== 'trace');
  if (onNeck && made.strings.length === 0) return 'Choose at least one string set.';
  return null;
}
