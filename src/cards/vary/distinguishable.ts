import { explainedBy, possibleEmbellishments } from '../../theory/analysis/analysis.ts';
import { isSounded } from '../../neck/sounded.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { compare } from '../../theory/rhythm.ts';
import {
  byDegrees,
  eachVariation,
  movedToBegin,
  soonVaried,
  type Variation,
} from '../../theory/variations/variations.ts';
import { stepsBetween } from '../../theory/variations/scaleSteps.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';

/** So many are offered. */
export const OFFERED = 4;

/** Longer than this nobody keeps a variation in the ear, notes. */
const LONGEST = 28;

const known = new WeakMap<Excerpt['notes'], Variation[]>();

/**
 * The variations of a stretch that an ear can tell apart, by their sound alone: of those that sound alike only the
 * first. Reckoned once for a stretch that cards are drawn of.
 */
export function distinguishable(excerpt: Excerpt): readonly Variation[] {
  let all = known.get(excerpt.notes);
  if (!all) {
    all = [...soundingUnlike(excerpt)];
    known.set(excerpt.notes, all);
  }
  return all;
}

const told = new WeakMap<Excerpt, boolean>();

/**
 * Whether there are four of them, one with the pitches of the stretch alone, whose places are known. Reckoned once for a
 * stretch; mostly those that are soon made are enough.
 */
export function canBeTold(excerpt: Excerpt): boolean {
  let can = told.get(excerpt);
  if (can === undefined) {
    const soon = soonVaried(stretchOf(excerpt), excerpt.key);
    can = areEnough(excerpt, unlike(excerpt, soon)) || areEnough(excerpt, soundingUnlike(excerpt));
    told.set(excerpt, can);
  }
  return can;
}

function areEnough(excerpt: Excerpt, variations: Iterable<Variation>): boolean {
  const pitches = new Set(excerpt.notes.map(({ midi }) => midi));
  let [found, hasPlaces] = [0, false];
  for (const { phrase } of variations) {
    found++;
    hasPlaces ||= phrase.notes.every(({ midi }) => pitches.has(midi));
    if (found >= OFFERED && hasPlaces) return true;
  }
  return false;
}

/** The tempo changes no variation. */
const stretchOf = ({ notes }: Excerpt): Phrase => ({ notes, tempo: 60 });

/** Each made when it is asked for. */
function soundingUnlike(excerpt: Excerpt): Generator<Variation, void> {
  const { key, notes, groups } = excerpt;
  const phrase = stretchOf(excerpt);
  const tones = notes.flatMap(({ embellishes }, note) => {
    const [embellishment] = embellishes ? possibleEmbellishments(phrase, key, note) : [];
    return embellishment ? { note, embellishment } : [];
  });
  return unlike(excerpt, eachVariation(phrase, key, explainedBy(phrase, key, groups, tones)));
}

/** Those of the variations that are short enough, and sound like neither the stretch nor one before. */
function* unlike(excerpt: Excerpt, variations: Iterable<Variation>): Generator<Variation, void> {
  const before = [stretchOf(excerpt)];
  for (const one of variations) {
    if (one.phrase.notes.length > LONGEST) continue;
    if (before.some((other) => alike(other, one.phrase))) continue;
    before.push(one.phrase);
    yield one;
  }
}

const choices = new WeakMap<Variation, Choices>();

/** What may stand beside a variation. */
interface Choices {
  /** Begins on its first note: the others moved there along the scale, and the stretch itself. */
  readonly alike: readonly Variation[];
  /** Begins elsewhere, unmoved. */
  readonly other: readonly Variation[];
}

/**
 * What may be offered beside one variation of a stretch, all of it notes that the instrument has: no two sound alike, nor
 * like the stretch or this one. Where all begin on one note, who hears that alone knows nothing yet. Reckoned once for a
 * variation.
 */
export function choicesBeside(excerpt: Excerpt, one: Variation): Choices {
  let found = choices.get(one);
  if (!found) choices.set(one, (found = chosenBeside(excerpt, one)));
  return found;
}

function chosenBeside(excerpt: Excerpt, one: Variation): Choices {
  const { key, notes, instrument } = excerpt;
  const begin = one.phrase.notes[0]!;
  const begins = ({ phrase }: Variation) => phrase.notes[0]!.midi === begin.midi;
  const isThere = ({ phrase }: Variation) =>
    phrase.notes.every(({ midi }) => isSounded(instrument, midi));
  const stretch = stretchOf(excerpt);
  const all = distinguishable(excerpt);
  // Of those that sound alike once they are moved, the one that is what it was, and then the stretch itself.
  const moved = [
    ...all.filter(begins),
    byDegrees(stretch, key, stepsBetween(key, notes[0]!, begin)),
    ...all.map((each) => movedToBegin(each, key, begin)),
  ];
  const before = [stretch, one.phrase];
  const alikeOnes = moved.filter((each) => {
    if (!begins(each) || !isThere(each) || before.some((other) => alike(other, each.phrase)))
      return false;
    before.push(each.phrase);
    return true;
  });
  return { alike: alikeOnes, other: all.filter((each) => !begins(each) && isThere(each)) };
}

/** Whether the same notes begin at the same times, however long they last. */
function alike(a: Phrase, b: Phrase): boolean {
  return (
    a.notes.length === b.notes.length &&
    a.notes.every(
      ({ midi, at }, i) => midi === b.notes[i]!.midi && compare(at, b.notes[i]!.at) === 0,
    )
  );
}

/** How far two lines lie apart: semitones between notes of like number, in the mean, and one for each note more. */
export function lineDistance(a: Phrase, b: Phrase): number {
  const shared = Math.min(a.notes.length, b.notes.length);
  const apart = a.notes
    .slice(0, shared)
    .reduce((sum, { midi }, i) => sum + Math.abs(midi - b.notes[i]!.midi), 0);
  return apart / shared + Math.abs(a.notes.length - b.notes.length);
}
