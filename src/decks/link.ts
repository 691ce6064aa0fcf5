/**
 * A lesson's link: its document in few letters, deflated, in an envelope, behind `#/lesson/`.
 *
 * The letters are fields with a control character between them, which no document can hold; empty fields at the end are
 * left out. Marks stand behind the drills, what a phrase outlines behind its notes. Nothing is checked here beyond what is needed to unfold them into a document again: the document is, by
 * its schema.
 */
import type { Deck } from './deck.ts';
import { readDeck } from './document.ts';
import { drillFormOf } from './drills/index.ts';
import { altered, openLink } from './envelope.ts';
import type { Fault } from './envelope.ts';
import { kindOfLetter } from './kinds.ts';
import { unfoldMarks } from './marks.ts';
import { DOCUMENT_VERSION } from './schema.ts';

/** The newest version of the link that this program reads; a link has that of the document in it. */
const VERSION = DOCUMENT_VERSION;

/** The most bytes that a link may inflate to: more than any document within its limits takes. */
const MOST_INFLATED = 200_000;

export const FIELD = '\u001f';

/**
 * The deck that a link holds, or what is wrong with it and what to do.
 *
 * @param text the whole address, the part after `#`, or the payload alone, as pasted from a message
 */
export async function readLink(text: string): Promise<{ readonly deck: Deck } | Fault> {
  const opened = openLink('lesson', VERSION, text);
  if ('fault' in opened) return opened;
  const letters = await inflate(opened.body);
  if (letters === null) return { fault: altered('lesson') };
  if (letters === 'too large') {
    return {
      fault:
        'This lesson link unpacks to more than any lesson holds, so it was not opened. Ask your teacher for it once more.',
    };
  }
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
    lessonDay: day ? day.replace(/^(....)(..)(..)$/, '$1-$2-$3') : null,
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

/** The text that bytes inflate to; read piece by piece, so that a small link cannot fill the memory. */
async function inflate(bytes: Uint8Array<ArrayBuffer>): Promise<string | 'too large' | null> {
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  const reader = stream.getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let text = '';
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return text + decoder.decode();
      length += value.length;
      if (length > MOST_INFLATED) {
        await reader.cancel();
        return 'too large';
      }
      text += decoder.decode(value, { stream: true });
    }
  } catch {
    // Not a deflated stream, or not text in it: the streams have no other way of telling.
    return null;
  }
}
