import { explainedBy, possibleEmbellishments } from '../../theory/analysis/analysis.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { compare } from '../../theory/rhythm.ts';
import { eachVariation, type Variation } from '../../theory/variations/variations.ts';
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

/** Whether there are four of them, one with the pitches of the stretch alone, whose places are known. */
export function canBeTold(excerpt: Excerpt): boolean {
  const pitches = new Set(excerpt.notes.map(({ midi }) => midi));
  let [found, hasPlaces] = [0, false];
  for (const { phrase } of soundingUnlike(excerpt)) {
    found++;
    hasPlaces ||= phrase.notes.every(({ midi }) => pitches.has(midi));
    if (found >= OFFERED && hasPlaces) return true;
  }
  return false;
}

/** Each made when it is asked for. */
function* soundingUnlike({ key, notes, groups }: Excerpt): Generator<Variation, void> {
  // The tempo changes no variation.
  const phrase: Phrase = { notes, tempo: 60 };
  const tones = notes.flatMap(({ embellishes }, note) => {
    const [embellishment] = embellishes ? possibleEmbellishments(phrase, key, note) : [];
    return embellishment ? { note, embellishment } : [];
  });
  const analysis = explainedBy(phrase, key, groups, tones);
  const before = [phrase];
  for (const one of eachVariation(phrase, key, analysis)) {
    if (one.phrase.notes.length > LONGEST) continue;
    if (before.some((other) => alike(other, one.phrase))) continue;
    before.push(one.phrase);
    yield one;
  }
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
export function distance(a: Phrase, b: Phrase): number {
  const shared = Math.min(a.notes.length, b.notes.length);
  const apart = a.notes
    .slice(0, shared)
    .reduce((sum, { midi }, i) => sum + Math.abs(midi - b.notes[i]!.midi), 0);
  return apart / shared + Math.abs(a.notes.length - b.notes.length);
}
