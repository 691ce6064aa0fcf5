/**
 * What was heard of a line, as an answer: a word for each note that was asked, in order, `62 - 66@0.84 ?`. A number is
 * the note that was heard, MIDI, right or not; behind `@` it says when, in seconds after the first; `-` is a note that
 * was not played, `?` one that nobody can tell. `+65` stands behind the note after which something else was heard too.
 */
import type { Performance, NoteVerdict } from '../../listening/listening.ts';

/** What became of a note that was asked. */
type Answered =
  | { readonly is: 'heard'; readonly midi: number; readonly time: number | null }
  | { readonly is: 'missing' | 'untold' };

/** An answer taken apart. */
export interface PlayedAnswer {
  readonly notes: readonly Answered[];
  /** Notes heard beside those asked, and the note after which each came, −1 before the first. */
  readonly extras: readonly { readonly midi: number; readonly after: number }[];
}

/**
 * The answer that a performance is.
 *
 * @param asked the notes that were asked, MIDI
 * @param timed whether times belong to it, as they do at a tempo
 */
export function answerOf(
  { notes, extras }: Pick<Performance, 'notes' | 'extras'>,
  asked: readonly number[],
  timed: boolean,
): string {
  const first = notes.find((note) => note && 'time' in note);
  const begun = first && 'time' in first ? first.time : 0;
  const at = (time: number) => (timed ? `@${Math.max(0, time - begun).toFixed(3)}` : '');
  const extrasAfter = (index: number) =>
    extras.filter(({ after }) => after === index).map(({ heard }) => `+${heard}`);
  const words = notes.map((note, i) => wordOf(note, asked[i]!, at));
  return [...extrasAfter(-1), ...words.flatMap((word, i) => [word, ...extrasAfter(i)])].join(' ');
}

function wordOf(note: NoteVerdict | null, asked: number, at: (time: number) => string): string {
  if (note?.verdict === 'right') return asked + at(note.time);
  if (note?.verdict === 'wrong') return note.heard + at(note.time);
  return note?.verdict === 'missing' ? '-' : '?';
}

/** Inverts `answerOf`; words that it would not write are left out. */
export function readAnswer(answer: string): PlayedAnswer {
  const notes: Answered[] = [];
  const extras: { midi: number; after: number }[] = [];
  for (const word of answer.split(' ')) {
    const [, plus, midi, time] = /^(\+?)(\d{1,3})(?:@(\d+(?:\.\d+)?))?$/.exec(word) ?? [];
    if (word === '-') notes.push({ is: 'missing' });
    else if (word === '?') notes.push({ is: 'untold' });
    else if (plus) extras.push({ midi: Number(midi), after: notes.length - 1 });
    else if (midi)
      notes.push({
        is: 'heard',
        midi: Number(midi),
        time: time === undefined ? null : Number(time),
      });
  }
  return { notes, extras };
}

/** How a note of an answer stands: null where it cannot be told. */
type Heard = 'right' | 'wrong' | 'missing';

export function heardOf(note: Answered | undefined, asked: number): Heard | null {
  if (!note || note.is === 'untold') return null;
  if (note.is !== 'heard') return 'missing';
  return note.midi === asked ? 'right' : 'wrong';
}
