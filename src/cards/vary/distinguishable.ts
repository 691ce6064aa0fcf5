import { explainedBy, possibleEmbellishments } from '../../theory/analysis/analysis.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { compare } from '../../theory/rhythm.ts';
import { variations, type Variation } from '../../theory/variations/variations.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';

/** So many are offered. */
export const OFFERED = 4;

/** Longer than this nobody keeps a variation in the ear, notes. */
const LONGEST = 28;

const known = new WeakMap<Excerpt['notes'], Variation[] | null>();

/**
 * The variations of a stretch that an ear can tell apart, by their sound alone: of those that sound alike only the
 * first. Null where there are fewer than four, or none with the pitches of the stretch alone, whose places are known.
 * Reckoned once for a stretch: when its item is made, for every card that is drawn of it after.
 */
export function distinguishable(excerpt: Excerpt): Variation[] | null {
  const before = known.get(excerpt.notes);
  if (before !== undefined) return before;
  const found = soundingUnlike(excerpt);
  const pitches = new Set(excerpt.notes.map(({ midi }) => midi));
  const hasPlaces = found.some(({ phrase }) => phrase.notes.every(({ midi }) => pitches.has(midi)));
  const all = found.length >= OFFERED && hasPlaces ? found : null;
  known.set(excerpt.notes, all);
  return all;
}

function soundingUnlike({ key, notes, groups }: Excerpt): Variation[] {
  // The tempo changes no variation.
  const phrase: Phrase = { notes, tempo: 60 };
  const tones = notes.flatMap(({ embellishes }, note) => {
    const [embellishment] = embellishes ? possibleEmbellishments(phrase, key, note) : [];
    return embellishment ? { note, embellishment } : [];
  });
  const analysis = explainedBy(phrase, key, groups, tones);
  const found: Variation[] = [];
  for (const one of variations(phrase, key, analysis)) {
    if (one.phrase.notes.length > LONGEST || alike(one.phrase, phrase)) continue;
    if (!found.some((other) => alike(other.phrase, one.phrase))) found.push(one);
  }
  return found;
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
