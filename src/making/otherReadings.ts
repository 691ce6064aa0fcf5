import type { Group } from '../theory/analysis/analysis.ts';
import type { Chord } from '../theory/chord.ts';

/** What else a group's notes may outline: alone, as one arpeggio with those of the group next to it, or cut otherwise. */
export interface OtherReading {
  readonly chord: Chord;
  readonly confidence: number;
  readonly joins: 'the one before' | 'the next' | 'other notes' | null;
  /** All its notes: `from` up to and not including `to`. */
  readonly span: readonly [from: number, to: number];
}

/** From what confidence on another reading is told of. */
const WORTH_SAYING = 0.05;

/** The alternatives of one of a phrase's groups, and what other groups are no idle thought; the likeliest first. */
export function otherReadings(groups: readonly Group[], at: number): OtherReading[] {
  const { from, to, alternatives, joined, regrouped } = groups[at]!;
  const before = groups[at - 1];
  const next = groups[at + 1];
  const others: OtherReading[] = alternatives.map((other) => ({
    ...other,
    joins: null,
    span: [from, to],
  }));
  if (before?.joined && before.joined.confidence >= WORTH_SAYING)
    others.push({ ...before.joined, joins: 'the one before', span: [before.from, to] });
  if (next && joined && joined.confidence >= WORTH_SAYING)
    others.push({ ...joined, joins: 'the next', span: [from, next.to] });
  for (const { from: start, to: end, ...reading } of regrouped)
    if (reading.confidence >= WORTH_SAYING && !isJoin(groups, at, start, end))
      others.push({ ...reading, joins: 'other notes', span: [start, end] });
  return others.toSorted((a, b) => b.confidence - a.confidence);
}

/** Whether these are the notes of a group and of one next to it. */
function isJoin(groups: readonly Group[], at: number, from: number, to: number): boolean {
  return [at - 1, at].some((first) => groups[first]?.from === from && groups[first + 1]?.to === to);
}

/** The likeliest of them, where that is no idle thought. */
export function likeliestOther(groups: readonly Group[], at: number): OtherReading | null {
  const [other] = otherReadings(groups, at);
  return other && other.confidence >= WORTH_SAYING ? other : null;
}
