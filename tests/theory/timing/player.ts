import { seeded, type Random } from '../../../src/theory/random.ts';
import type { TimePlan } from '../../../src/theory/timing/plan.ts';

/**
 * A simulated tapper: a clock that spreads, a hand whose delay spreads (A. Wing & A. Kristofferson, *Response delays and
 * the timing of discrete motor responses*, Perception & Psychophysics 14, 1973), and where a click sounds a share of how
 * late the tap was taken back (B. Repp, *Sensorimotor synchronization*, Psychonomic Bulletin & Review 12, 2005).
 */
export interface Player {
  /** The steps' own standard deviation, as a fraction of the smallest step. */
  readonly spread: number;
  /** The hand's standard deviation against the clock's. */
  readonly hand: number;
  /** 0 to 1. */
  readonly correction: number;
  /** Seconds. */
  readonly lag: number;
  /** How late each place of the beat is meant, in seconds. */
  readonly bend: readonly number[];
  /** What of a second is added to each. */
  readonly drift: number;
}

export const EVEN: Player = {
  spread: 0.05,
  hand: 0.4,
  correction: 0.25,
  lag: 0.03,
  bend: [],
  drift: 0,
};

/** Times in seconds as the screen tells them; a `panel` of 0 tells them as they are. */
export function tapped(player: Player, plan: TimePlan, seed: number, panel = 0): number[] {
  const chance = seeded(seed);
  const { slots } = plan;
  const unit = slots.slice(1).reduce((u, s, i) => Math.min(u, s.seconds - slots[i]!.seconds), 9);
  const scale = (player.spread * unit) / unscaledSpread(player, plan);
  const strays = strayed(player, slots, chance, scale);
  const phase = chance.next() * panel;
  return slots.map(({ seconds, at }, i) => {
    const place = Math.round((at.n / at.d - Math.floor(at.n / at.d)) * plan.figure.division);
    const meant = seconds * (1 + player.drift) + player.lag + (player.bend[place] ?? 0);
    const time = meant + strays[i]!;
    return panel > 0 ? Math.ceil((time - phase) / panel) * panel + phase : time;
  });
}

/** How far from where it was meant each tap falls. */
function strayed(
  { hand, correction }: Pick<Player, 'hand' | 'correction'>,
  slots: readonly { readonly seconds: number; readonly clicked: boolean }[],
  chance: Random,
  scale: number,
): number[] {
  let clock = 0;
  return slots.map(({ clicked }) => {
    const tap = clock + hand * normal(chance);
    clock += normal(chance) - (clicked ? correction * tap : 0);
    return tap * scale;
  });
}

const spreads = new Map<string, number>();

/** The spread of the steps of a player whose clock has 1, from a long run with clicks where the plan has them. */
function unscaledSpread(player: Player, { slots }: TimePlan): number {
  const clicks = slots.map(({ clicked }) => Number(clicked)).join('');
  const id = `${player.hand} ${player.correction} ${clicks}`;
  const known = spreads.get(id);
  if (known !== undefined) return known;
  const long = Array.from({ length: 60 }, () => slots).flat();
  const taps = strayed(player, long, seeded(7), 1);
  const steps = taps.slice(1).map((tap, i) => tap - taps[i]!);
  const spread = Math.sqrt(steps.reduce((sum, x) => sum + x * x, 0) / steps.length);
  spreads.set(id, spread);
  return spread;
}

/** Box & Muller 1958. */
export function normal(chance: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - chance.next()));
  return radius * Math.cos(2 * Math.PI * chance.next());
}
