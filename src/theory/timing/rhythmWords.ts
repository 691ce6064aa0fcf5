import type { PhraseNote } from '../phrase.ts';
import { add, beats, compare, subtract, type Beats } from '../rhythm.ts';
import { beatsText, parseBeats } from '../rhythmText.ts';
import { TAPS } from './figure.ts';

/** Notes as far as a rhythm knows them. */
export type RhythmNote = Pick<PhraseNote, 'at' | 'length'>;

/** The finest part of a beat that is told, and the longest a note may last. */
const FINEST = 48;
const LONGEST = 64;
/** So many words a rhythm has at most: one that needs more is no figure that anyone keeps. */
const MOST_WORDS = 36;

const WORD = /^(r?)([1-9]\d*(?:\/[1-9]\d*)?)(?:x([1-9]\d?))?$/;

/**
 * The rhythm of a line in words: how long it is from each note to the next, what comes several times running counted
 * (`1/3x11`), the last note as long as it is held; a rest before the first is `r1/2`. Of a long line its first 48 notes.
 *
 * @returns null where it cannot be told in so few words, or two notes begin together
 */
export function rhythmWords(line: readonly RhythmNote[]): string[] | null {
  const notes = line.slice(0, TAPS);
  const [first] = notes;
  if (!first) return null;
  const steps = notes.map(({ at, length }, i) => {
    const next = line[i + 1];
    return next ? subtract(next.at, at) : length;
  });
  const words = first.at.n > 0 ? [`r${beatsText(first.at)}`] : [];
  for (let i = 0; i < steps.length;) {
    let to = i + 1;
    while (steps[to] && compare(steps[to]!, steps[i]!) === 0) to++;
    words.push(beatsText(steps[i]!) + (to - i > 1 ? `x${to - i}` : ''));
    i = to;
  }
  return readRhythm(words) ? words : null;
}

/** The notes of a rhythm; null where the words tell none. Inverts `rhythmWords`. */
export function readRhythm(words: readonly string[]): RhythmNote[] | null {
  if (words.length > MOST_WORDS) return null;
  const notes: RhythmNote[] = [];
  let now = beats(0);
  for (const [i, word] of words.entries()) {
    const [, rest, lengthText = '', count = '1'] = WORD.exec(word) ?? [];
    const length = parseBeats(lengthText);
    if (!length || !isLength(length) || (rest === 'r' && (i > 0 || count !== '1'))) return null;
    if (rest === 'r') now = length;
    else for (let n = Number(count); n > 0; n--) now = sound(notes, now, length);
  }
  return notes.length > 0 && notes.length <= TAPS ? notes : null;
}

function sound(notes: RhythmNote[], at: Beats, length: Beats): Beats {
  notes.push({ at, length });
  return add(at, length);
}

const isLength = ({ n, d }: Beats) => d <= FINEST && n > 0 && n <= LONGEST * d;
