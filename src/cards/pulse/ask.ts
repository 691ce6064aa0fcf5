import { ALLOWED } from '../../theory/timing/judge.ts';
import { timePlan, type TimePlan } from '../../theory/timing/plan.ts';
import type { Card } from '../kind.ts';
import { figureOf, type PulseItem } from './items.ts';

/** A figure laid out in time, to be tapped. */
export interface PulseCard extends Card<PulseItem> {
  readonly plan: TimePlan;
  /** The spread of the steps to be kept below, as a fraction of a step. */
  readonly allowed: number;
}

/** The seed says how even it has to be: an odd one, for an item well known, allows the least. */
export function ask(item: PulseItem, seed: number): PulseCard {
  const { key, instrument, tempo, clicks } = item;
  const plan = timePlan(figureOf(item), tempo, clicks);
  const [widest, narrowest] = [ALLOWED[0], ALLOWED.at(-1)!];
  return { item, seed, key, instrument, plan, allowed: seed % 2 === 1 ? narrowest : widest };
}
