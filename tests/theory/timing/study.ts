import { seeded, seedAt } from '../../../src/theory/random.ts';
import { evenFigure } from '../../../src/theory/timing/figure.ts';
import type { FigureName } from '../../../src/theory/timing/figureNames.ts';
import { judgedTaps, type TimeJudgement } from '../../../src/theory/timing/judge.ts';
import { timePlan, type TimePlan } from '../../../src/theory/timing/plan.ts';
import { CLICKS } from '../../../src/theory/timing/clicks.ts';
import { EVEN, tapped, type Player } from './player.ts';

export const PANELS = [1 / 60, 1 / 120, 1 / 240, 0] as const;

/** A card and a player drawn for it, of the kind that is asked for. */
export interface Drawn {
  readonly plan: TimePlan;
  readonly player: Player;
  readonly taps: number[];
}

/** What of a draw is not left to chance. */
export interface Wish {
  readonly figure?: FigureName;
  readonly taps?: number;
  readonly panel?: number;
  readonly tempo?: number;
  readonly player?: Partial<Player>;
}

/** A card at 60 to 126 with any plan for the click, and a player with any share of hand and of correction. */
export function drawn(seed: number, wish: Wish = {}): Drawn {
  const chance = seeded(seed);
  const tempo = wish.tempo ?? 60 + chance.below(12) * 6;
  const plan = timePlan(
    evenFigure(wish.figure ?? 'triplets', 4, wish.taps),
    tempo,
    chance.pick(CLICKS),
  );
  const player = {
    ...EVEN,
    hand: chance.below(5) / 4,
    correction: 0.15 + chance.below(4) / 6,
    lag: 0.06 * chance.next() - 0.02,
    ...wish.player,
  };
  const panel = wish.panel ?? chance.pick(PANELS);
  return { plan, player, taps: tapped(player, plan, seedAt(seed, 1), panel) };
}

/** Percentages of verdicts. */
export interface Verdicts {
  readonly right: number;
  readonly near: number;
  readonly wrong: number;
}

/** How a player whose spread is so many times what is allowed is judged. */
export function verdicts(
  times: number,
  allowed: number,
  seeds: readonly number[],
  wish: Wish = {},
): Verdicts {
  const count = { right: 0, near: 0, wrong: 0 };
  for (const seed of seeds) {
    const { plan, taps } = drawn(seed, {
      ...wish,
      player: { ...wish.player, spread: times * allowed },
    });
    const { verdict } = judgedTaps(taps, plan, { allowed });
    if (verdict) count[verdict]++;
  }
  const percent = (n: number) => (100 * n) / seeds.length;
  return { right: percent(count.right), near: percent(count.near), wrong: percent(count.wrong) };
}

/** In how many of a hundred cards something is told. */
export function share(
  seeds: readonly number[],
  wish: Wish,
  told: (judgement: TimeJudgement, drawn: Drawn) => boolean,
): number {
  const count = seeds.filter((seed) => {
    const draw = drawn(seed, wish);
    return told(judgedTaps(draw.taps, draw.plan, { allowed: 0.1 }), draw);
  });
  return (100 * count.length) / seeds.length;
}

/** Seeds that nothing was chosen on begin at a million. */
export const seedsFrom = (first: number, count: number) =>
  Array.from({ length: count }, (_, i) => first + i);
