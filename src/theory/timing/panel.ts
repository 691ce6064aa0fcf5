import { mean, variance } from './statistics.ts';

/** Screens and keyboards are asked for news between so many and so many times a second. */
const RATES = [48, 260] as const;
/** How closely steps keep to a panel's own for it to be seen: 1 is exactly, 0 not at all. */
const KEPT = 0.75;
/** How closely the steps of an even player could keep to it by chance; above this nothing can be told. */
const BY_CHANCE = 0.35;
const FEWEST = 12;

/**
 * The step of the clock that a screen times touches by, in seconds: the largest that all steps between taps are whole
 * multiples of. Steps that do are alike in phase when wound around it, and the mean of their cosines is 1 (as in the
 * Rayleigh test of circular statistics, K. Mardia & P. Jupp, *Directional Statistics*, 2000); those of even taps without
 * any panel scatter by exp(−(2π rate · SD)² / 2).
 *
 * @param steps seconds from tap to tap
 * @returns null where there is none to be seen: too few steps, too even, or a finer clock
 */
export function panelStep(steps: readonly number[]): number | null {
  if (steps.length < FEWEST) return null;
  const spread = Math.sqrt(variance(steps));
  // A tenth of a turn over one step.
  const tick = 0.1 / mean(steps);
  for (let rate = RATES[0]; rate <= RATES[1]; rate += tick) {
    if (Math.exp(-((2 * Math.PI * rate * spread) ** 2) / 2) > BY_CHANCE) continue;
    if (kept(steps, rate) < KEPT) continue;
    return 1 / summit(steps, rate, tick);
  }
  return null;
}

function kept(steps: readonly number[], rate: number): number {
  let sum = 0;
  for (const step of steps) sum += Math.cos(2 * Math.PI * rate * step);
  return sum / steps.length;
}

/**
 * The rate that the steps keep to best, from the first that they keep to at all up to short of its octave: steps that
 * hardly differ keep to a row of rates below the panel's own.
 */
function summit(steps: readonly number[], from: number, tick: number): number {
  const near = bestRate(steps, from, 1.3 * from, tick);
  return bestRate(steps, near - tick, near + tick, tick / 10);
}

function bestRate(steps: readonly number[], from: number, to: number, tick: number): number {
  const rates = Array.from(
    { length: Math.ceil((to - from) / tick) + 1 },
    (_, i) => from + i * tick,
  );
  const how = rates.map((rate) => kept(steps, rate));
  return rates[how.indexOf(Math.max(...how))]!;
}

/** The standard deviation of a time that is rounded to steps: they are spread evenly over one, step² / 12. */
export function roundingError(step: number): number {
  return step / Math.sqrt(12);
}
