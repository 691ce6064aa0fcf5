import { memberCount, type Size } from '../theory/chord.ts';
import { DEGREES } from '../theory/scale.ts';

/**
 * The degree that a wrong answer stands for: itself, or of a path the one whose arpeggio its first notes walk: three of
 * them, of chords larger than a seventh six or four. Null where those are no arpeggio of the size, or could be more than
 * one, as two notes a third apart.
 */
export function degreeAnswered(answer: string, size: Size): number | null {
  const degrees = answer.split(' ').map(Number);
  if (degrees.length === 1) return degrees[0]!;
  const lengths = memberCount(size) > 4 ? [6, 4] : [3];
  const found = lengths.map((length) => rootsOf(degrees.slice(0, length), size));
  return found.find((roots) => roots.length === 1)?.[0] ?? null;
}

/** The degrees on which an arpeggio of the size holds all these degrees, its highest member among them. */
function rootsOf(degrees: readonly number[], size: Size): number[] {
  const members = Array.from({ length: memberCount(size) }, (_, third) => (2 * third) % 7);
  return DEGREES.filter((root) => {
    const above = degrees.map((degree) => (degree - root + 7) % 7);
    // Of chords larger than triads a phrase sounds the highest member: without it they would not be told apart.
    const telling = size === 'triad' || above.includes(members.at(-1)!);
    const rooted = members.length <= 4 || above.includes(0);
    return telling && rooted && above.every((member) => members.includes(member));
  });
}
