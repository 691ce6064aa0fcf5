/** One thing to try after a free minute, from the lesson's own drills and phrases. */
import { isTimeDrill, type Deck } from '../decks/deck.ts';
import { letterDegree, type Key } from '../theory/key.ts';
import { numeralLabel } from '../theory/naming.ts';
import { chordOn } from '../theory/chord.ts';
import { parentKey } from '../theory/scale.ts';
import type { Phrase } from '../theory/phrase.ts';
import type { MinuteTold } from './minute.ts';

/** Judgements: what is a long run, few leaps, narrow on the neck, uneven (in seconds), of so many moves at least. */
const RUN = 6;
const FEW_LEAPS = 0.3;
const MOVES = 12;
const BOX = 4;
const UNEVEN = 0.035;

/**
 * What to try next: the first that fits, or null where the lesson drills nothing that would. It says what was played,
 * and names what of the lesson goes another way.
 */
export function advice(told: MinuteTold, deck: Deck): string | null {
  return (
    aboutRun(told, deck) ?? aboutLeaps(told, deck) ?? aboutBox(told, deck) ?? aboutTime(told, deck)
  );
}

/** `You ran nine steps up: try the sixths in the phrase.` */
function aboutRun({ line: { run } }: MinuteTold, { phrases, key }: Deck): string | null {
  const [phrase] = phrases;
  const leap = phrase && usualLeap(phrase, key);
  if (!run || run.steps < RUN || !leap) return null;
  const where = phrases.length === 1 ? 'the phrase' : 'the first phrase';
  return `You ran ${countWord(run.steps)} steps ${run.direction}: try the ${leap} in ${where}.`;
}

/** `Few leaps this time: try vi, which the lesson asks and you have not outlined.` */
function aboutLeaps({ line, outlined }: MinuteTold, deck: Deck): string | null {
  const isLong = line.run !== null && line.run.steps >= RUN;
  const moves = line.steps + line.leaps + line.repeats;
  if (moves < MOVES || (!isLong && line.leaping! >= FEW_LEAPS)) return null;
  const drilled = deck.drills.flatMap((drill) => ('degrees' in drill ? drill.degrees : []));
  const left = drilled.find((degree) => !outlined.some(({ chord }) => chord.degree === degree));
  if (left === undefined) return null;
  const numeral = numeralLabel(chordOn(parentKey(deck.key), left, 'triad'));
  const what = isLong
    ? `You ran ${countWord(line.run.steps)} steps ${line.run.direction}`
    : 'Few leaps this time';
  return `${what}: try the arpeggio of ${numeral}, which this lesson asks.`;
}

/** `All of it lay in frets 2 to 5: this lesson goes up to fret 10.` */
function aboutBox({ along }: MinuteTold, { drills }: Deck): string | null {
  if (!along) return null;
  const [low, high] = along.frets;
  if (high - low >= BOX) return null;
  const highest = Math.max(0, ...drills.map((drill) => ('frets' in drill ? drill.frets[1] : 0)));
  if (highest < high + BOX) return null;
  return `All of it lay in frets ${low} to ${high}: this lesson goes up to fret ${highest}, so try the same there.`;
}

/** `Your notes lay 41 ms around the beat: keep triplets at 60 once more.` */
function aboutTime({ even: { spread } }: MinuteTold, { drills }: Deck): string | null {
  const drill = drills.find(isTimeDrill);
  if (!drill || spread < UNEVEN) return null;
  const ms = Math.round(1000 * spread);
  const figure = drill.figures[0] === 'phrase' ? 'the phrase’s rhythm' : drill.figures[0];
  return `Your notes lay ${ms} ms around the beat: keep ${figure} even at ${drill.tempos[0]} once more.`;
}

const LEAPS = ['thirds', 'fourths', 'fifths', 'sixths', 'sevenths', 'octaves'];

/** What a phrase leaps by most often, of what is wider than a third where there is any; null where it never leaps. */
function usualLeap({ notes }: Phrase, key: Key): string | null {
  const counts = new Map<string, number>();
  notes.slice(1).forEach((note, i) => {
    const name = leapOf(key, notes[i]!, note);
    if (name) counts.set(name, (counts.get(name) ?? 0) + 1);
  });
  const byCount = [...counts].toSorted((a, b) => b[1] - a[1]).map(([name]) => name);
  return byCount.find((name) => name !== LEAPS[0]) ?? byCount[0] ?? null;
}

/** By its letters: `sixths`; null for a step, a repeat, or more than an octave. */
function leapOf(
  key: Key,
  from: Phrase['notes'][number],
  to: Phrase['notes'][number],
): string | null {
  const [low, high] = from.midi < to.midi ? [from, to] : [to, from];
  const semitones = high.midi - low.midi;
  if (semitones < 3 || semitones > 12) return null;
  const letters = (letterDegree(key, high.name) - letterDegree(key, low.name) + 7) % 7;
  return LEAPS[(letters === 0 ? 7 : letters) - 2] ?? null;
}

const COUNTS = ['six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const countWord = (count: number) => COUNTS[count - 6] ?? String(count);
