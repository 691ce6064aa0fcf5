import type { Group } from '../theory/analysis/analysis.ts';
import { isToneRuling, spanOf, type Ruling } from '../theory/analysis/ruling.ts';
import type { Chord } from '../theory/chord.ts';
import type { Phrase } from '../theory/phrase.ts';

/** The rulings with one more, which takes the place of those that speak of the same. */
export function ruled(rulings: readonly Ruling[], ruling: Ruling): Ruling[] {
  return [...unruled(rulings, spanOf(ruling), isToneRuling(ruling)), ruling];
}

/** The rulings without those on the groups of these notes; or, of `tones`, on what these notes are in their groups. */
export function unruled(
  rulings: readonly Ruling[],
  [from, to]: readonly [number, number],
  tones = false,
): Ruling[] {
  return rulings.filter((ruling) => {
    const [start, end] = spanOf(ruling);
    return isToneRuling(ruling) !== tones || end <= from || to <= start;
  });
}

/** Lets a group end elsewhere: inside it or in the next one, which begins there, or with the next one as a whole. */
export function endedAt(
  rulings: readonly Ruling[],
  group: Group,
  next: Group,
  end: number,
): Ruling[] {
  const first = grouped(rulings, [group.from, end], chordRuled(rulings, group));
  return end === next.to ? first : grouped(first, [end, next.to], chordRuled(rulings, next));
}

/** Cuts a group in two; what each outlines is found. */
export function splitAt(rulings: readonly Ruling[], { from, to }: Group, at: number): Ruling[] {
  return grouped(grouped(rulings, [from, at]), [at, to]);
}

function grouped(
  rulings: readonly Ruling[],
  span: readonly [number, number],
  chord?: Chord,
): Ruling[] {
  return ruled(rulings, { span, ...(chord && { chord }) });
}

/** Whether a group's notes, and its chord, are as they are because they were ruled so. */
export function ruledGroup(rulings: readonly Ruling[], { from, to }: Group) {
  return rulings.find(
    (ruling) => 'span' in ruling && ruling.span[0] === from && ruling.span[1] === to,
  );
}

const chordRuled = (rulings: readonly Ruling[], group: Group) => ruledGroup(rulings, group)?.chord;

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
    const [from, to] = spanOf(ruling);
    if (to <= same) return [ruling];
    if (from < was.length - sameEnd) return [];
    return 'span' in ruling
      ? [{ ...ruling, span: [from + moved, to + moved] }]
      : [{ ...ruling, note: from + moved }];
  });
}
