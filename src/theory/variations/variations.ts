import type { Analysis, Group } from '../analysis/analysis.ts';
import type { Key } from '../key.ts';
import { keyLabel } from '../naming.ts';
import { semitonesAbove } from '../note.ts';
import type { Phrase, PhraseNote } from '../phrase.ts';
import { add, subtract, beats, times } from '../rhythm.ts';
import { noteOn, stepOf, stepsBetween } from './scaleSteps.ts';
import {
  oneAfterAnother,
  inRhythmOf,
  soundsLike,
  type TimedPitch,
  type Variation,
} from './variation.ts';

export type { Variation } from './variation.ts';

/**
 * What can be made of a phrase without leaving its key, each different from it in a stated way; those that would sound
 * like the phrase itself are left out. A note outside the scale, as ♯7 in minor, stays only where its neighbours do.
 * Each is made when it is asked for.
 *
 * @param keys other keys and modes to move the phrase to
 */
export function* eachVariation(
  phrase: Phrase,
  key: Key,
  analysis: Analysis,
  keys: readonly Key[] = [],
): Generator<Variation, void> {
  if (phrase.notes.length < 2) return;
  const all = [
    () => backwards(phrase, key),
    () => otherStart(phrase, key),
    () => upsideDown(phrase, key),
    () => chordsReversed(phrase, key, analysis),
    () => fourths(phrase, key, analysis),
    () => passingIn(phrase, key, analysis),
    () => passingOut(phrase, key, analysis),
    () => byDegrees(phrase, key, 2),
    () => byDegrees(phrase, key, -2),
    ...keys.map((other) => () => movedTo(phrase, key, other)),
  ];
  for (const make of all) {
    const variation = make();
    if (variation && !soundsLike(variation.phrase, phrase)) yield variation;
  }
}

/** Those of them that are soon made, whatever arpeggios the phrase outlines. */
export function* soonVaried(phrase: Phrase, key: Key): Generator<Variation, void> {
  if (phrase.notes.length < 2) return;
  yield backwards(phrase, key);
  yield otherStart(phrase, key);
  yield byDegrees(phrase, key, 2);
  yield byDegrees(phrase, key, -2);
}

/** Last note first, in the same rhythm. */
export function backwards(phrase: Phrase, key: Key): Variation {
  return {
    name: 'backwards',
    says: 'The same notes from the last to the first, in the same rhythm.',
    phrase: inRhythmOf(phrase, phrase.notes.toReversed()),
    key,
  };
}

/** The second note first and the first one last, so that every accent falls on another note. */
function otherStart(phrase: Phrase, key: Key): Variation {
  const [first, ...rest] = phrase.notes;
  return {
    name: 'from the second note',
    says: 'It starts on its second note and ends on its first: the accents fall elsewhere.',
    phrase: inRhythmOf(phrase, first ? [...rest, first] : []),
    key,
  };
}

/** Mirrored along the scale about its first note. */
export function upsideDown(phrase: Phrase, key: Key): Variation {
  const steps = phrase.notes.map((note) => stepOf(key, note).step);
  const sounds = steps.map((step) => noteOn(key, 2 * steps[0]! - step));
  return {
    name: 'upside down',
    says: 'Where it rose it falls as many steps of the scale, and the other way round.',
    phrase: inRhythmOf(phrase, sounds),
    key,
  };
}

/** Every note the same number of scale steps higher or lower. */
export function byDegrees(phrase: Phrase, key: Key, by: number): Variation {
  const way = by > 0 ? 'up' : 'down';
  const steps = `${Math.abs(by)} ${Math.abs(by) === 1 ? 'step' : 'steps'}`;
  return {
    name: `${way} ${steps}`,
    says: `Every note lies ${steps} of the scale ${by > 0 ? 'higher' : 'lower'}, so every arpeggio stands on another degree.`,
    phrase: inRhythmOf(
      phrase,
      phrase.notes.map((note) => noteOn(key, stepOf(key, note).step + by)),
    ),
    key,
  };
}

/**
 * A variation moved along the scale, so that it begins on the step of a note, and named after both: `backwards, up 2
 * steps`; what it says is the variation's. The same one where it begins there.
 */
export function movedToBegin(
  one: Variation,
  key: Key,
  note: Pick<PhraseNote, 'midi' | 'name'>,
): Variation {
  const by = stepsBetween(key, one.phrase.notes[0]!, note);
  if (by === 0) return one;
  const moved = byDegrees(one.phrase, key, by);
  return { ...moved, name: `${one.name}, ${moved.name}`, says: one.says };
}

/**
 * On the same degrees of another key or mode, the tonic moved the shorter way. Into the same scale it sounds the same
 * but higher or lower; into another scale each step becomes that scale's own.
 */
export function movedTo(phrase: Phrase, key: Key, other: Key): Variation {
  const up = semitonesAbove(key.tonic, other.tonic);
  const semitones = up > 6 ? up - 12 : up;
  const same = key.scale === other.scale;
  const foreign = phrase.notes.filter((note) => stepOf(key, note).raised !== 0).length;
  const sounds = phrase.notes.map((note) => {
    const { step, raised } = stepOf(key, note);
    const octave = Math.round((noteOn(key, step).midi + semitones - noteOn(other, step).midi) / 12);
    const { midi, name } = noteOn(other, step + 7 * octave);
    return same ? { midi: midi + raised, name: altered(name, raised) } : { midi, name };
  });
  const where = same
    ? `${Math.abs(semitones)} ${Math.abs(semitones) === 1 ? 'semitone' : 'semitones'} ${semitones < 0 ? 'lower' : 'higher'}`
    : `with the notes of that scale on the same degrees${foreign === 0 ? '' : `; what was altered (${foreign} ${foreign === 1 ? 'note' : 'notes'}) becomes the scale’s own`}`;
  const name = keyLabel(other, 'english');
  return {
    name: `in ${name}`,
    says: `It is moved to ${name}, ${where}.`,
    phrase: inRhythmOf(phrase, sounds),
    key: other,
  };
}

/** A note name by semitones higher or lower on the same letter. */
function altered(name: string, raised: number): string {
  const signs = name.slice(1);
  const sum = raised + (signs[0] === 'b' ? -signs.length : signs.length);
  return name[0]! + (sum < 0 ? 'b' : '#').repeat(Math.abs(sum));
}

/** The groups in opposite order, each as it was; null where there is only one. */
export function chordsReversed(phrase: Phrase, key: Key, { groups }: Analysis): Variation | null {
  if (groups.length < 2) return null;
  const timed = withTimes(phrase);
  const order = groups.toReversed();
  return {
    name: 'chords in opposite order',
    says: `The arpeggios come in the order ${order.map(({ chord }) => chord.numeral).join(' ')}, each as it was.`,
    phrase: oneAfterAnother(
      phrase.tempo,
      order.flatMap(({ from, to }) => timed.slice(from, to)),
    ),
    key,
  };
}

/** How many groups of a cycle of fourths: all seven chords, and the first again. */
const CYCLE = 8;

/** The first arpeggio of three notes or more, carried along the cycle of fourths; null where there is none. */
export function fourths(phrase: Phrase, key: Key, { groups }: Analysis): Variation | null {
  const group = groups.find(({ from, to }) => to - from >= 3);
  if (!group) return null;
  const model = withTimes(phrase).slice(group.from, group.to);
  // A fourth up and a fifth down by turns: 0, 3, −1, 2, … stays within the hand.
  const turns = Array.from({ length: CYCLE }, (_, i) => (i % 2 === 0 ? -i / 2 : 3 - (i - 1) / 2));
  const sounds = turns.flatMap((by) =>
    model.map((note) => ({ ...note, ...noteOn(key, stepOf(key, note).step + by) })),
  );
  return {
    name: 'along the cycle of fourths',
    says: 'Its first arpeggio goes through all seven chords, each a fourth above the last or a fifth below.',
    phrase: oneAfterAnother(phrase.tempo, sounds),
    key,
  };
}

/** Every third inside an arpeggio filled by its passing tone, which takes half of the note before. */
export function passingIn(phrase: Phrase, key: Key, { groups }: Analysis): Variation | null {
  let filled = 0;
  const timed = withTimes(phrase);
  const sounds = groups.flatMap(({ from, to }: Group) =>
    timed.slice(from, to).flatMap((note, i) => {
      const next = timed[from + i + 1];
      const [a, b] = [note, next ?? note].map((one) => stepOf(key, one).step) as [number, number];
      if (from + i + 1 >= to || Math.abs(b - a) !== 2) return [note];
      filled++;
      const half = times(note.until, beats(1, 2));
      return [
        { ...note, length: half, until: half },
        { ...noteOn(key, (a + b) / 2), length: half, until: half },
      ];
    }),
  );
  if (filled === 0) return null;
  return {
    name: 'with passing tones',
    says: `${filled === 1 ? 'A third is' : `${filled} thirds are`} filled by the note between, which takes half of the time of the one before.`,
    phrase: oneAfterAnother(phrase.tempo, sounds),
    key,
  };
}

/** Without its passing tones, whose time goes to the note before; null where there is none to leave out. */
export function passingOut(phrase: Phrase, key: Key, analysis: Analysis): Variation | null {
  const { notes } = analysis;
  const sounds: TimedPitch[] = [];
  let left = 0;
  withTimes(phrase).forEach((note, i) => {
    const before = sounds.at(-1);
    if (!before || notes[i]?.embellishment !== 'passing') return sounds.push(note);
    left++;
    sounds[sounds.length - 1] = {
      ...before,
      length: add(before.until, note.length),
      until: add(before.until, note.until),
    };
  });
  if (left === 0) return null;
  return {
    name: 'without passing tones',
    says: `${left === 1 ? 'Its passing tone is' : `Its ${left} passing tones are`} left out and the note before lasts longer.`,
    phrase: oneAfterAnother(phrase.tempo, sounds),
    key,
  };
}

/** The phrase's sounds with the time from each onset to the next. */
function withTimes({ notes }: Phrase): TimedPitch[] {
  return notes.map(({ midi, name, at, length }, i) => ({
    midi,
    name,
    length,
    until: notes[i + 1] ? subtract(notes[i + 1]!.at, at) : length,
  }));
}
