import type { Sounding } from './line.ts';
import { ARPEGGIOS as W } from './weights.ts';

/**
 * How evenly groups follow one another. Harmonic rhythm in such phrases is mostly even, and one group's figure is often
 * the next one's on other steps of the scale (F. Lerdahl & R. Jackendoff, *A Generative Theory of Tonal Music*, 1983:
 * grouping preference rules 5, symmetry, and 6, parallelism).
 */
export interface Evenness {
  /** How many notes a group before it has that lasts as long: `[from × longest + length − 1]`; 0 where there is none. */
  readonly before: Int32Array;
  /**
   * What following such a group costs, in the same order: the less, the more moves of its figure are that one's too, by
   * steps of the scale; infinite where there is none.
   */
  readonly even: Float64Array;
}

/** How evenly every group of a line, `longest` notes at most, would follow the one before it. */
export function evennessOf(line: readonly Sounding[], longest: number): Evenness {
  const before = new Int32Array(line.length * longest);
  const even = new Float64Array(line.length * longest).fill(Infinity);
  const startingAt = new Map<number, number>();
  line.forEach(({ at, upbeat }, i) => {
    const start = tick(at + upbeat);
    if (!startingAt.has(start)) startingAt.set(start, i);
  });
  for (let length = 1; length <= longest; length++) {
    const alike = likenesses(line, length);
    for (let from = 1; from + length <= line.length; from++) {
      const { at } = line[from]!;
      const last = line[from + length - 1]!;
      const start = startingAt.get(tick(2 * at - last.at - last.length));
      if (start === undefined || from - start > longest) continue;
      const span = from * longest + length - 1;
      before[span] = from - start;
      const figured = from - start === length && line[start]!.chroma !== line[from]!.chroma;
      const moves = alike[from + length - 1]! - alike[from]!;
      even[span] = figured && length > 2 ? (-W.figure * moves) / Math.sqrt(length - 1) : 0;
    }
  }
  return { before, even };
}

/** A time as a whole number, so that sums of thirds meet. */
const tick = (beats: number) => Math.round(beats * 5040);

/** How many moves up to each note go as many steps of the scale as those a number of notes earlier. */
function likenesses(line: readonly Sounding[], earlier: number): Float64Array {
  const counts = new Float64Array(line.length);
  for (let i = 1; i < line.length; i++) {
    const like = line[i - earlier]?.into;
    counts[i] = counts[i - 1]! + Number(like?.steps === line[i]!.into!.steps);
  }
  return counts;
}
