import { familiesOf } from '../../../src/memory/start.ts';
import type { Item } from '../../../src/practice/item.ts';
import type { Random } from '../../../src/theory/random.ts';
import { clamp, DAY, normal, sigmoid } from './world.ts';

/**
 * Hidden memories that answer the cards. None of them is the model that the app reckons with: each forgets by another
 * law, and each has items, degrees and string sets that come harder to it than others.
 */
export interface Hidden {
  /** How hard each item is, more is harder; for whoever may know it. */
  readonly hard: readonly number[];
  /** The chance of knowing the item at a time, no guess counted. */
  chance(item: number, now: number): number;
  /** The item is asked, known or not, and its right answer shown. */
  practise(item: number, now: number, known: boolean): void;
  /** The chance at `then`, were it asked now and found known, or not. Changes nothing. */
  after(item: number, now: number, known: boolean, then: number): number;
}

/** How widely the parameters of students are drawn: 1 as in tuning, more for those reported on. */
export type MakeHidden = (
  items: readonly Item[],
  random: Random,
  spread: number,
  common?: readonly number[],
) => Hidden;

/** How much of the difficulties' variance a class has in common. */
const COMMON = 0.4;

/** How hard each item is to this student: a part for the degree, one for the string set, one of its own. Mean 0. */
export function difficulties(
  items: readonly Item[],
  random: Random,
  own: number,
  common?: readonly number[],
): number[] {
  const parts = new Map<string, number>();
  const part = (name: string, deviation: number) => {
    if (!parts.has(name)) parts.set(name, normal(random, 0, deviation));
    return parts.get(name)!;
  };
  return items.map((item, k) => {
    const alone =
      part(`degree ${item.degree}`, 0.4 * own) +
      part(`strings ${item.strings}`, 0.25 * own) +
      normal(random, 0, own);
    if (!common) return alone;
    return Math.sqrt(1 - COMMON) * alone + Math.sqrt(COMMON) * own * common[k]!;
  });
}

/** The siblings of every item, as positions. */
export function siblingsOf(items: readonly Item[]): number[][] {
  const members = new Map<string, number[]>();
  items.forEach(({ id }, k) => {
    for (const family of familiesOf(id)) members.set(family, [...(members.get(family) ?? []), k]);
  });
  return items.map(({ id }, k) =>
    familiesOf(id).flatMap((family) => members.get(family)!.filter((other) => other !== k)),
  );
}

interface Trace {
  readonly at: number;
  readonly decay: number;
  readonly weight: number;
}

/**
 * A power law of practice and forgetting: activation is the sum of traces that each fade as a power of their age, the
 * faster the stronger the item was when it was laid (Pavlik & Anderson, "Practice and forgetting effects on vocabulary
 * memory", Cognitive Science 29, 2005: decay .177 + .217·e^m, threshold −.704, noise .255, time between sittings
 * counted at .025). To that: practice carries over to siblings; a degree with a like-sounding neighbour is taken for
 * it, the more the stronger the neighbour is.
 */
export const powerLaw: MakeHidden = (items, random, spread, common) =>
  power(items, random, spread, 0, common);

/** The same with a weaker hold: what is learned late in the day and half listened to. */
export const weakPowerLaw: MakeHidden = (items, random, spread, common) =>
  power(items, random, spread, -0.5, common);

function power(
  items: readonly Item[],
  random: Random,
  spread: number,
  bias: number,
  common?: readonly number[],
): Hidden {
  const hard = difficulties(items, random, 0.3 * spread, common);
  const bonus = bias + normal(random, 0.68, 0.12 * spread);
  const noise = 0.255 * Math.exp(normal(random, 0, 0.1 * spread));
  const carried = clamp(normal(random, 0.06, 0.03 * spread), 0, 0.2);
  const rivalry = clamp(normal(random, 0.2, 0.1 * spread), 0, 0.6);
  const siblings = siblingsOf(items);
  const rivals = rivalsOf(items);
  const traces: Trace[][] = items.map(() => []);

  const age = (from: number, to: number) => {
    const seconds = Math.max(1, (to - from) / 1000);
    return seconds < 1200 ? seconds : 1200 + 0.025 * (seconds - 1200);
  };
  const odds = (k: number, now: number) => {
    let sum = 1e-9;
    for (const { at, decay, weight } of traces[k]!) {
      if (at < now) sum += weight * age(at, now) ** -decay;
    }
    return sum;
  };
  const activation = (sum: number, k: number, now: number) => {
    const own = Math.log(sum) - hard[k]! + bonus;
    const rival = rivals[k] === undefined ? -9 : Math.log(odds(rivals[k], now)) - hard[rivals[k]]!;
    return own - rivalry * clamp(rival - own + 0.3, 0, 2);
  };
  const chanceOf = (sum: number, k: number, now: number) =>
    sigmoid((activation(sum, k, now) + 0.704) / noise);
  const decayAt = (sum: number) => Math.min(1.2, 0.177 + 0.217 * sum);
  const weightOf = (known: boolean) => (known ? 1.1 : 0.9);
  return {
    hard,
    chance: (k, now) => chanceOf(odds(k, now), k, now),
    practise(k, now, known) {
      const weight = weightOf(known);
      const laid = [k, ...siblings[k]!].map((other) => decayAt(odds(other, now)));
      traces[k]!.push({ at: now, decay: laid[0]!, weight });
      siblings[k]!.forEach((other, i) =>
        traces[other]!.push({ at: now, decay: laid[i + 1]!, weight: carried * weight }),
      );
    },
    after(k, now, known, then) {
      const added = weightOf(known) * age(now, then) ** -decayAt(odds(k, now));
      return chanceOf(odds(k, then) + added, k, then);
    },
  };
}

/** Like-sounding degrees: ii and IV, iii and V, vi and I, in one shape share two notes. */
function rivalsOf(items: readonly Item[]): (number | undefined)[] {
  const partner: Record<number, number> = { 1: 6, 6: 1, 2: 4, 4: 2, 3: 5, 5: 3 };
  const place = new Map(items.map(({ id }, k) => [id, k]));
  return items.map(({ id, degree }) => {
    const other = partner[degree];
    return other === undefined
      ? undefined
      : place.get(id.split(':').with(2, String(other)).join(':'));
  });
}

/** How fast an item is got and lost. */
const POOLS = 8;

/**
 * Memory on many scales of time: leaky pools of ever longer life, from half an hour to most of a year, each filled by
 * what the faster ones have not kept (after Pashler, Cepeda, Lindsey, Vul & Mozer, "Predicting the optimal spacing of
 * study: a multiscale context model of memory", NIPS 2009).
 */
export const multiscale: MakeHidden = (items, random, spread, common) => {
  const hard = difficulties(items, random, 0.35 * spread, common);
  const ability = normal(random, 0, 0.2 * spread);
  const carried = clamp(normal(random, 0.08, 0.04 * spread), 0, 0.25);
  const step = 3.2 * Math.exp(normal(random, 0, 0.05 * spread));
  const lives = Array.from({ length: POOLS }, (_, i) => 0.02 * step ** i);
  const shares = lives.map((_, i) => 0.82 ** i);
  const siblings = siblingsOf(items);
  const pools = items.map(() => new Float64Array(POOLS));
  const laid = items.map(() => 0);

  /** Strength of the first i + 1 pools together, for every i. */
  const strengths = (k: number, now: number) => {
    const days = Math.max(0, (now - laid[k]!) / DAY);
    let [sum, share] = [0, 0];
    return lives.map((life, i) => {
      sum += shares[i]! * pools[k]![i]! * Math.exp(-days / life);
      share += shares[i]!;
      return sum / share;
    });
  };
  const total = (k: number, now: number) => strengths(k, now)[POOLS - 1]!;
  const rate = (k: number, known: boolean) =>
    clamp((known ? 2 : 0.7) * Math.exp(ability - hard[k]!), 0.02, 2.5);
  const filled = (k: number, now: number, amount: number) => {
    const days = Math.max(0, (now - laid[k]!) / DAY);
    const strength = strengths(k, now);
    return lives.map(
      (life, i) => pools[k]![i]! * Math.exp(-days / life) + amount * Math.max(0, 1 - strength[i]!),
    );
  };
  const chanceOf = (strength: number) => clamp(strength * 1.2, 0, 0.98);
  const put = (k: number, now: number, amount: number) => {
    pools[k] = Float64Array.from(filled(k, now, amount));
    laid[k] = now;
  };
  return {
    hard,
    chance: (k, now) => chanceOf(total(k, now)),
    practise(k, now, known) {
      put(k, now, rate(k, known));
      for (const other of siblings[k]!) put(other, now, carried * rate(other, false));
    },
    after(k, now, known, then) {
      const days = (then - now) / DAY;
      const next = filled(k, now, rate(k, known));
      const sum = next.reduce((s, x, i) => s + shares[i]! * x * Math.exp(-days / lives[i]!), 0);
      return chanceOf(sum / shares.reduce((a, b) => a + b));
    },
  };
};

/**
 * All or none: an item is known or it is not, is got at a stroke with some chance whenever it is shown, and is lost
 * at a constant rate that halves with every spaced success (one-element learning after Bower, "Application of a model to
 * paired-associate learning", Psychometrika 26, 1961, with exponential loss).
 */
export const allOrNone: MakeHidden = (items, random, spread, common) => {
  const hard = difficulties(items, random, 0.5 * spread, common);
  const ability = normal(random, 0.6, 0.3 * spread);
  const lasting = 5.5 * Math.exp(normal(random, 0, 0.3 * spread));
  const growth = 1.9 * Math.exp(normal(random, 0, 0.1 * spread));
  const siblings = siblingsOf(items);
  /** The chance of its being known when last touched, its life in days, and when that was. */
  const state = items.map((_, k) => ({ known: 0, life: lasting * Math.exp(-hard[k]!), at: 0 }));
  const chance = (k: number, now: number) =>
    state[k]!.known * Math.exp(-Math.max(0, now - state[k]!.at) / DAY / state[k]!.life);
  const got = (k: number) => sigmoid(ability - hard[k]!);
  const longer = (k: number, now: number) =>
    1 + (growth - 1) * (1 - Math.exp(-Math.max(0, now - state[k]!.at) / DAY / 0.3));
  return {
    hard,
    chance,
    practise(k, now, known) {
      const one = state[k]!;
      if (known) one.life *= longer(k, now);
      else one.life = Math.max(lasting * Math.exp(-hard[k]!) * 0.7, one.life * 0.6);
      one.known = known ? 1 : Number(random.next() < got(k));
      one.at = now;
      for (const other of siblings[k]!) {
        const p = chance(other, now);
        if (p > 0 || random.next() >= 0.04 * got(other)) continue;
        Object.assign(state[other]!, { known: 1, at: now });
      }
    },
    after(k, now, known, then) {
      const days = (then - now) / DAY;
      if (known) return Math.exp(-days / (state[k]!.life * longer(k, now)));
      return got(k) * Math.exp(-days / (lasting * Math.exp(-hard[k]!)));
    },
  };
};
