import type { Ruling } from '../../theory/analysis/ruling.ts';
import type { Phrase } from '../../theory/phrase.ts';

/** The rulings with one more, which takes the place of those on the same notes; null only takes those back. */
export function ruled(
  rulings: readonly Ruling[],
  span: readonly [number, number],
  ruling: Ruling | null,
): Ruling[] {
  const others = rulings.filter((other) => {
    const [from, to] = 'span' in other ? other.span : [other.note, other.note + 1];
    return to <= span[0] || from >= span[1];
  });
  return ruling ? [...others, ruling] : others;
}

/** What rulings hang on: the pitches of notes in their order. */
interface Line {
  readonly notes: readonly Pick<Phrase['notes'][number], 'midi'>[];
}

/**
 * The rulings that still hold after a change of notes: those on notes before it, and those on notes after it, which may
 * have other numbers now.
 */
export function keptRulings(rulings: readonly Ruling[], before: Line, after: Line): Ruling[] {
  const [was, is] = [before.notes, after.notes];
  const shorter = Math.min(was.length, is.length);
  let same = 0;
  while (same < shorter && was[same]!.midi === is[same]!.midi) same++;
  let sameEnd = 0;
  while (sameEnd < shorter - same && was.at(-1 - sameEnd)!.midi === is.at(-1 - sameEnd)!.midi)
    sameEnd++;
  const moved = is.length - was.length;
  return rulings.flatMap((ruling): Ruling[] => {
    const [from, to] = 'span' in ruling ? ruling.span : [ruling.note, ruling.note + 1];
    if (to <= same) return [ruling];
    if (from < was.length - sameEnd) return [];
    return 'span' in ruling
      ? [{ ...ruling, span: [from + moved, to + moved] }]
      : [{ ...ruling, note: from + moved }];
  });
}
