import type { Chord } from './chord.ts';
import { chroma, type NoteName } from './note.ts';

/** Where one note of a chord goes in the next. */
export interface Move {
  readonly from: NoteName;
  readonly to: NoteName;
  /** −5 to 6; 0 where the note stays. */
  readonly semitones: number;
}

/** The notes that two chords of a key have in common, in the first one's order. */
export function sharedNotes(a: Chord, b: Chord): NoteName[] {
  return a.notes.filter((note) => b.notes.includes(note));
}

/**
 * Who leads where from one chord to the next: each note of the smaller chord paired with another of the larger so that
 * all together move as little as can be (the most direct voice leading); notes without a partner are left out.
 */
export function leading(a: Chord, b: Chord): Move[] {
  const turned = a.notes.length > b.notes.length;
  const [few, many] = turned ? [b.notes, a.notes] : [a.notes, b.notes];
  const pairs = nearestPairs(few, many);
  return pairs.map(([one, other]) => {
    const [from, to] = turned ? [other, one] : [one, other];
    return { from, to, semitones: between(from, to) };
  });
}

/** The shorter way round from one note to another, −5 to 6 semitones. */
function between(from: NoteName, to: NoteName): number {
  const up = (chroma(to) - chroma(from) + 12) % 12;
  return up > 6 ? up - 12 : up;
}

function nearestPairs(
  few: readonly NoteName[],
  many: readonly NoteName[],
): readonly (readonly [NoteName, NoteName])[] {
  let best = Infinity;
  let pairs: readonly (readonly [NoteName, NoteName])[] = [];
  const taken: (readonly [NoteName, NoteName])[] = [];
  const extend = (cost: number, used: ReadonlySet<NoteName>) => {
    if (cost >= best) return;
    const note = few[taken.length];
    if (note === undefined) {
      best = cost;
      pairs = [...taken];
      return;
    }
    for (const partner of many) {
      if (used.has(partner)) continue;
      taken.push([note, partner]);
      extend(cost + Math.abs(between(note, partner)), new Set([...used, partner]));
      taken.pop();
    }
  };
  extend(0, new Set());
  return pairs;
}
