import type { Trial } from './trials.ts';

/** How what was foretold did against what then happened. */

/** Fewer tell nothing. */
const ENOUGH = 50;

export interface Hindsight {
  readonly answers: number;
  /** Mean log loss, less is better: ours; that of always saying the student's mean so far. */
  readonly ours: number;
  readonly constant: number;
  /** Of the answers that were given a chance in each fifth, from 0 to 1: how many, that chance and the share right. */
  readonly fifths: readonly {
    readonly answers: number;
    readonly foretold: number;
    readonly happened: number;
  }[];
}

/** Looks back on the trials kept; null before there are enough to tell. */
export function hindsight({ trials }: { readonly trials: readonly Trial[] }): Hindsight | null {
  if (trials.length < ENOUGH) return null;
  const sums = { ours: 0, constant: 0 };
  const fifths = Array.from({ length: 5 }, () => ({ answers: 0, foretold: 0, happened: 0 }));
  let rights = 0;
  trials.forEach(({ foretold, right }, k) => {
    sums.ours += logLoss(foretold, right);
    sums.constant += logLoss((rights + 1) / (k + 2), right);
    if (right) rights++;
    const fifth = fifths[Math.min(4, Math.floor(foretold * 5))]!;
    fifth.answers++;
    fifth.foretold += foretold;
    fifth.happened += right ? 1 : 0;
  });
  return {
    answers: trials.length,
    ours: sums.ours / trials.length,
    constant: sums.constant / trials.length,
    fifths: fifths.map(({ answers, foretold, happened }) => ({
      answers,
      foretold: foretold / Math.max(1, answers),
      happened: happened / Math.max(1, answers),
    })),
  };
}

/** The penalty for having given so much chance to what did not happen. */
export function logLoss(chance: number, right: boolean): number {
  const safe = Math.min(0.99, Math.max(0.01, chance));
  return -Math.log(right ? safe : 1 - safe);
}
