/**
 * What the letters of a lesson's link say: any document. One of arpeggios alone `plainLesson.ts` reads too.
 *
 * Marks stand behind the drills, what a phrase outlines behind its notes. Nothing is checked here beyond what is needed to unfold them into a document again: the document is, by
 * its schema.
 */
import type { Deck } from './deck.ts';
import { readDeck } from './document.ts';
import { drillFormOf } from './drills/index.ts';
import type { Fault } from './envelope.ts';
import { kindOfLetter } from './kinds.ts';
import { FIELD, lettersOf } from './letters.ts';
import { unfoldMarks } from './marks.ts';
import { DOCUMENT_VERSION } from './version.ts';
import { unfoldDay } from './writing.ts';

/**
 * The deck that a link holds, or what is wrong with it and what to do.
 *
 * @param text the whole address, the part after `#`, or the payload alone, as pasted from a message
 */
export async function readLink(text: string): Promise<{ readonly deck: Deck } | Fault> {
  const letters = await lettersOf(text);
  return typeof letters === 'string' ? readLetters(letters) : letters;
}

/** The same of a link that was opened. */
export function readLetters(letters: string): { readonly deck: Deck } | Fault {
  const read = readDeck(unfold(letters));
  if ('deck' in read) return read;
  return {
    fault: `This lesson link holds something that no lesson has. ${read.fault} Show this to your teacher.`,
  };
}

function unfold(letters: string): unknown {
  const [title, note, day, key, instrument, drills, ...phrases] = letters.split(FIELD);
  const rows = drills ? drills.split(' ') : [];
  const marks = rows.filter((row) => row.startsWith('='));
  return {
    version: DOCUMENT_VERSION,
    title,
    note,
    lessonDay: day ? unfoldDay(day) : null,
    instrument: instrument ? parse(instrument) : 'guitar',
    key,
    drills: rows.slice(0, rows.length - marks.length).map(unfoldDrill),
    phrases: phrases.map((phrase) => {
      const [first = '', ...rest] = phrase.split(' ');
      const [, tempo, hand] = /^(\d*)(.*)$/s.exec(first)!;
      const outline = rest.filter((word) => word.startsWith(RULED));
      const notes = rest.slice(0, rest.length - outline.length).map(unfoldNote);
      return {
        tempo: Number(tempo),
        notes,
        ...(hand && { hand: unfoldHand(hand) }),
        ...(outline.length > 0 && { outline: outline.map(unfoldRuling) }),
      };
    }),
    ...(marks.length > 0 && { marks: unfoldMarks(marks) }),
  };
}

function unfoldHand(letters: string): string {
  return (
    HAND_LETTERS.find(([, letter]) => letter === letters)?.[0] ?? letters.replace('@', 'at fret ')
  );
}

export const HAND_LETTERS = [
  ['movable', 'm'],
  ['open strings', 'o'],
] as const;

function unfoldDrill(letters: string): unknown {
  const kind = kindOfLetter(letters[0]);
  return kind && { kind, ...drillFormOf(kind).unfold(letters.slice(1)) };
}

/** The words of a note, each with its mark in the link. */
export const MARKS = [
  [' at ', '@'],
  [' for ', '='],
  [' on ', ':'],
  [' by ', '~'],
] as const;

function unfoldNote(letters: string): string {
  return MARKS.reduce((text, [word, mark]) => text.replace(mark, word), letters);
}

/** What begins a ruling in the link: `!4-6V7` is `4-6 V7`. */
export const RULED = '!';

function unfoldRuling(letters: string): string {
  return letters.slice(1).replace(/(\d)(?=[^\d-])/, '$1 ');
}

/** JSON from a link, or null, which no schema takes: what is undefined would stand for the usual. */
function parse(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return null;
  }
}
