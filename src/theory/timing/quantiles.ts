import { mean, variance } from './statistics.ts';

/**
 * The value that a standard normal one stays below with probability p, 0 < p < 1; off by 4.5·10⁻⁴ at most (M.
 * Abramowitz & I. Stegun, *Handbook of Mathematical Functions*, 1964, 26.2.23).
 */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return above / below - t;
}

/** The same of Student's t with `freedom` degrees, 3 or more (Abramowitz & Stegun 26.7.5). */
export function studentQuantile(p: number, freedom: number): number {
  const z = normalQuantile(p);
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  return z + first / freedom + second / freedom ** 2 + third / freedom ** 3;
}

/**
 * The same of χ² with `freedom` degrees, whole or not, divided by them: what a sample's variance is at most, in units of
 * the true one (E. Wilson & M. Hilferty, *The distribution of chi-square*, PNAS 17, 1931).
 */
export function varianceQuantile(p: number, freedom: number): number {
  const c = 2 / (9 * freedom);
  return Math.max(0, 1 - c + normalQuantile(p) * Math.sqrt(c)) ** 3;
}

/**
 * Which values lie too far out for a normal sample, at most `most` of them, with a false alarm in `chance` of samples: the
 * generalised extreme Studentised deviate, which several outliers cannot hide from by widening the spread (B. Rosner,
 * *Percentage points for a generalized ESD many-outlier procedure*, Technometrics 25, 1983).
 *
 * @returns their indices, the farthest first
 */
export function outliers(of: readonly number[], most: number, chance = 0.01): number[] {
  const left = new Set(of.keys());
  const taken: number[] = [];
  let found = 0;
  while (taken.length < most && left.size > 5) {
    const values = [...left].map((i) => of[i]!);
    const middle = mean(values);
    const spread = Math.sqrt(variance(values));
    const far = (i: number) => Math.abs(of[i]! - middle);
    const farthest = [...left].reduce((a, b) => (far(b) > far(a) ? b : a));
    const n = left.size;
    const t = studentQuantile(1 - chance / (2 * n), n - 2);
    const limit = ((n - 1) * t) / Math.sqrt((n - 2 + t * t) * n);
    left.delete(farthest);
    taken.push(farthest);
    if (far(farthest) > limit * spread) found = taken.length;
  }
  return taken.slice(0, found);
}
