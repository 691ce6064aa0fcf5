import type { TimedOnset } from './steps.ts';
import { mean } from './statistics.ts';

/** A tap to be pointed at. */
export interface WorstTap {
  readonly tap: number;
  readonly slot: number;
  /** Seconds late between its neighbours; below 0 early. */
  readonly late: number;
}

/** How many are pointed at, how far out among the others in standard deviations, and in seconds. */
const MOST = 3;
const OUT = 3;
const LEAST = 0.02;

/** What is as even as this, seconds, is as even as can be. */
const EVEN = 1e-6;

/** A tap is judged by others no farther than so many slots from one end to the other. */
const NEAR = 4;

/**
 * The taps that stand farthest from where the two beside them would have them: at most three, none where all are alike.
 * How far out one is, be it the first or the last, is told by how even the others are without it; it is left out before
 * the next is looked for, or its neighbours would take the blame.
 */
export function worstTaps(onsets: readonly TimedOnset[]): WorstTap[] {
  const worst: WorstTap[] = [];
  let left = onsets;
  while (worst.length < MOST && betweenNeighbours(left).length >= 2 * MOST) {
    const found = left.flatMap((_, index) => outOf(left, index) ?? []);
    if (found.length === 0) break;
    const { tap, out } = found.reduce((a, b) => (b.out > a.out ? b : a));
    if (out < OUT || Math.abs(tap.late) < LEAST) break;
    worst.push(tap);
    left = left.filter(({ slot }) => slot !== tap.slot);
  }
  return worst;
}

/** A tap, and by how many standard deviations of the others it is out; null where nothing near it can tell. */
function outOf(
  onsets: readonly TimedOnset[],
  index: number,
): { tap: WorstTap; out: number } | null {
  const beside = besideTwo(onsets, index);
  if (!beside) return null;
  const others = betweenNeighbours(onsets.toSpliced(index, 1));
  const usual = Math.max(EVEN, Math.sqrt(meanSquare(others)));
  const { tap, slot } = onsets[index]!;
  const { late, doubt } = beside;
  return { tap: { tap, slot, late }, out: Math.abs(late) / (usual * doubt) };
}

const meanSquare = (lates: readonly number[]) => mean(lates.map((late) => late * late));

/** How late each is that has a neighbour on either side, seconds. */
function betweenNeighbours(onsets: readonly TimedOnset[]): number[] {
  return onsets
    .slice(1, -1)
    .flatMap((onset, i) => lateBeside(onset, onsets[i]!, onsets[i + 2]!)?.late ?? []);
}

/** How late one is beside its neighbours; of the first, the last and one before a gap, beside two on one side. */
function besideTwo(onsets: readonly TimedOnset[], index: number): Late | null {
  const pairs = [
    [index - 1, index + 1],
    [index + 1, index + 2],
    [index - 2, index - 1],
  ] as const;
  for (const [from, to] of pairs) {
    const [before, after] = [onsets[from], onsets[to]];
    const late = before && after && lateBeside(onsets[index]!, before, after);
    if (late) return late;
  }
  return null;
}

/** Seconds, and how much less sure that is than midway between two neighbours. */
interface Late {
  readonly late: number;
  readonly doubt: number;
}

/** How late a tap is on the line through two others; null where they lie too far apart to tell. */
function lateBeside(onset: TimedOnset, before: TimedOnset, after: TimedOnset): Late | null {
  const slots = [onset.slot, before.slot, after.slot];
  if (Math.max(...slots) - Math.min(...slots) > NEAR) return null;
  const share = (onset.expected - before.expected) / (after.expected - before.expected);
  const due = before.time + share * (after.time - before.time);
  return { late: onset.time - due, doubt: Math.sqrt((1 + share ** 2 + (1 - share) ** 2) / 1.5) };
}
