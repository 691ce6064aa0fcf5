import { describe, expect, it } from 'vitest';
import { beats } from '../../../src/theory/rhythm.ts';
import { seeded } from '../../../src/theory/random.ts';
import { evenFigure, phraseFigure } from '../../../src/theory/timing/figure.ts';
import { ALLOWED, judgedTaps } from '../../../src/theory/timing/judge.ts';
import { matched } from '../../../src/theory/timing/match.ts';
import { timePlan } from '../../../src/theory/timing/plan.ts';
import type { Clicks } from '../../../src/theory/timing/clicks.ts';
import { normal } from './player.ts';

const planned = (clicks: Clicks | null = 'beat', taps = 48, tempo = 80) =>
  timePlan(evenFigure('triplets', 4, taps), tempo, clicks);
const plan = planned();
const due = plan.slots.map(({ seconds }) => seconds);
/** Scattered by a standard deviation of 10 ms each: 14 ms, 5.7 % of a step, from one to the next. */
const scattered = (seed: number, by = 0.01) => {
  const chance = seeded(seed);
  return due.map((time) => time + by * normal(chance));
};
const without = (taps: readonly number[], i: number) => taps.filter((_, at) => at !== i);
const moved = (taps: readonly number[], i: number, by: number) =>
  taps.map((time, at) => (at === i ? time + by : time));

describe('matching', () => {
  const all = due.map((_, i) => ({ slot: i, tap: i }));

  it('is one to one where every tap is there, however late they all are', () => {
    for (const lag of [-0.08, 0, 0.1])
      expect(
        matched(
          due.map((t) => t + lag),
          due,
        ).pairs,
      ).toEqual(all);
  });

  // Glass and sound over the air are late by a third of a second together, and at 160 a triplet lasts an eighth of one.
  it.each([
    [60, 0.35],
    [80, 0.25],
    [120, 0.25],
    [120, 0.167],
    [160, 0.35],
    [200, 0.3],
  ])('is one to one at %f where a device that nobody measured is %f s late', (tempo, late) => {
    const figure = planned('beat', 48, tempo).slots.map(({ seconds }) => seconds);
    const chance = seeded(7);
    const taps = figure.map((time) => time + late + (0.4 / tempo) * normal(chance));
    expect(matched(taps, figure).pairs).toEqual(all);
  });

  it('has missing what whoever comes in late leaves out', () => {
    for (const count of [1, 2, 3, 12])
      for (const late of [0, 0.1])
        expect(
          matched(
            due.slice(count).map((time) => time + late),
            due,
          ).missing,
        ).toEqual(Array.from({ length: count }, (_, i) => i));
  });

  // A phone's delay is taken out before taps are held to the grid; whoever begins in the middle has taps missing.
  it.each([
    [0.12, 0.12, [0, 1, 2, 3]],
    [0.36, 0.36, [0, 1, 2, 3]],
    [-0.2, -0.2, [0, 1, 2, 3]],
    [0.5, 0, [2, 3]],
  ])('of taps %f s late where %f are expected begins where it was meant', (late, lag, slots) => {
    const four = [0, 0.25, 0.5, 0.75];
    const taps = four.slice(0, slots.length).map((time) => time + late);
    expect(matched(taps, four, lag).pairs).toEqual(slots.map((slot, tap) => ({ slot, tap })));
  });

  it('follows whoever leaves the tempo by a fifth', () => {
    for (const tempo of [0.8, 1.25])
      expect(
        matched(
          due.map((t) => t * tempo),
          due,
        ).pairs,
      ).toEqual(all);
  });

  it('finds a missing tap, wherever it is', () => {
    for (const i of [0, 1, 20, 46, 47]) {
      const { missing, extra } = matched(without(scattered(i), i), due);
      expect([missing, extra]).toEqual([[i], []]);
    }
  });

  it('finds a double tap, however soon', () => {
    for (const by of [0.02, 0.06, 0.11]) {
      const taps = scattered(3);
      taps.splice(21, 0, due[20]! + by);
      expect(matched(taps, due)).toMatchObject({
        missing: [],
        extra: [by < 0.03 ? expect.any(Number) : 21],
      });
    }
  });

  it('leaves out taps along with the count-in and the one that lands after the end', () => {
    const before = plan.countIn.map(({ seconds }) => seconds);
    const { pairs, outside } = matched([...before, ...due, plan.end], due);
    expect(pairs).toEqual(all.map(({ slot, tap }) => ({ slot, tap: tap + 12 })));
    expect(outside).toHaveLength(13);
  });

  it('resumes after a bar left out', () => {
    const taps = due.filter((_, i) => i < 12 || i >= 24);
    expect(matched(taps, due).missing).toEqual(Array.from({ length: 12 }, (_, i) => 12 + i));
  });

  it('matches nothing to no taps', () => {
    expect(matched([], due)).toMatchObject({ pairs: [], extra: [], outside: [] });
  });
});

describe('a judgement', () => {
  it('is right for exact taps, as even as can be told', () => {
    const { verdict, evenness, worst, tempo } = judgedTaps(due, plan, { allowed: 0.06 });
    expect(verdict).toBe('right');
    expect(evenness).toMatchObject({ fraction: null, spread: null, setAside: [] });
    expect(evenness!.finest).toBe(0.006);
    expect(worst).toEqual([]);
    expect(tempo).toBeCloseTo(80, 6);
  });

  it('is null for no taps, for few, and for a sixth of them', () => {
    for (const taps of [[], due.slice(0, 1), due.slice(0, 8)]) {
      const judgement = judgedTaps(taps, plan, { allowed: 0.1 });
      expect(judgement).toMatchObject({ verdict: null, evenness: null, drift: null, lag: null });
    }
    expect(judgedTaps([], plan, { allowed: 0.1 }).tempo).toBeNull();
  });

  it('keeps its spread when one tap is 80 ms off, and points at it', () => {
    let [spread, plain] = [0, 0];
    for (let seed = 1; seed <= 40; seed++) {
      const taps = scattered(seed);
      const judgement = judgedTaps(moved(taps, 25, 0.08), plan, { allowed: 0.1 });
      expect(judgement.worst[0]!.tap).toBe(25);
      expect(Math.abs(judgement.worst[0]!.late - 0.08)).toBeLessThan(0.04);
      spread += judgement.evenness!.spread! / 40;
      plain += judgedTaps(taps, plan, { allowed: 0.1 }).evenness!.spread! / 40;
    }
    expect(Math.abs(spread / plain - 1)).toBeLessThan(0.03);
  });

  it('is not moved by a missing tap or a double one', () => {
    const taps = scattered(5);
    const plain = judgedTaps(taps, plan, { allowed: 0.1 }).evenness!.fraction!;
    const missing = judgedTaps(without(taps, 30), plan, { allowed: 0.1 });
    const double = judgedTaps(
      [...taps, taps[30]! + 0.07].toSorted((a, b) => a - b),
      plan,
      { allowed: 0.1 },
    );
    for (const { evenness, verdict } of [missing, double]) {
      expect(Math.abs(evenness!.fraction! / plain - 1)).toBeLessThan(0.06);
      expect(verdict).toBe('right');
    }
  });

  it('says what keeps even taps from being right', () => {
    const held = (taps: number[], clicks: Clicks | null = 'beat') =>
      judgedTaps(taps, planned(clicks), { allowed: 0.1 }).heldBack;
    expect(held(due.filter((_, i) => i % 6 !== 1))).toBe('missing');
    expect(held(due.map((t) => t * 1.02))).toBe('drift');
    expect(
      held(
        due.map((t) => t * 1.02),
        null,
      ),
    ).toBeNull();
    expect(
      held(
        due.map((t) => t * 1.2),
        null,
      ),
    ).toBe('tempo');
    expect(held(due)).toBeNull();
  });

  // Of 48 notes four may be missing, four taps too many; the tempo may be 8 % off.
  it('lets one note in twelve go, and as many taps too many', () => {
    const heldBy = (taps: readonly number[]) =>
      judgedTaps(
        taps.toSorted((a, b) => a - b),
        planned(null),
        { allowed: 0.1 },
      ).heldBack;
    const left = (count: number) => due.filter((_, i) => i % 9 !== 4 || i > 9 * count);
    const doubled = (count: number) => [
      ...due,
      ...Array.from({ length: count }, (_, i) => due[9 * i + 4]! + 0.12),
    ];
    expect([left(4).length, left(5).length]).toEqual([44, 43]);
    expect([heldBy(left(4)), heldBy(left(5))]).toEqual([null, 'missing']);
    expect([heldBy(doubled(4)), heldBy(doubled(5))]).toEqual([null, 'extra']);
  });

  it.each([
    [1.07, null],
    [1.09, 'tempo'],
    [0.93, null],
    [0.91, 'tempo'],
  ])('at %f of the tempo is held back by %s', (factor, heldBack) => {
    const judgement = judgedTaps(
      due.map((t) => t / factor),
      planned(null),
      { allowed: 0.1 },
    );
    expect(judgement.heldBack).toBe(heldBack);
    expect(judgement.tempo).toBeCloseTo(80 * factor, 3);
  });

  it('drifts by so much a second, behind the click or ahead of it', () => {
    for (const slope of [-0.03, -0.015, 0.015, 0.03]) {
      const { drift, heldBack } = judgedTaps(
        due.map((t) => t * (1 + slope)),
        plan,
        { allowed: 0.1 },
      );
      expect(drift).toMatchObject({ slope: expect.closeTo(slope, 6), told: true });
      expect(heldBack).toBe('drift');
    }
    const little = judgedTaps(
      due.map((t) => t * 1.009),
      plan,
      { allowed: 0.1 },
    );
    expect([little.drift!.told, little.heldBack]).toEqual([false, null]);
  });

  it('knows a drift less surely where the click is seldom: by half as much again', () => {
    const error = (clicks: Clicks) =>
      judgedTaps(scattered(2), planned(clicks), { allowed: 0.1 }).drift!.error;
    expect(error('bar') / error('beat')).toBeCloseTo(1.5, 9);
    expect(error('gone')).toBe(error('bar'));
    // Steps that are off by a tenth and less by turns: .3 · √(1.2 · variance / steps).
    const uneven = due.map((time, i) => time + (i % 2) * 0.0125);
    const { drift } = judgedTaps(uneven, plan, { allowed: 0.1 });
    expect(drift!.error).toBeCloseTo(0.3 * Math.sqrt((1.2 * 0.0025) / 47), 3);
  });

  it('is late or early on the click by fifteen ms before it is told', () => {
    const lag = (by: number) =>
      judgedTaps(
        due.map((t) => t + by),
        plan,
        { allowed: 0.1, lag: 0 },
      ).lag!;
    expect([0.014, 0.016, -0.014, -0.016].map((by) => lag(by).told)).toEqual([
      false,
      true,
      false,
      true,
    ]);
    expect(lag(-0.03).change).toBeCloseTo(-0.03, 6);
  });

  it('asks at first for ten per cent, then for six', () => expect(ALLOWED).toEqual([0.1, 0.06]));

  it('tells the shape of a triplet and nothing of its even places', () => {
    const taps = scattered(8, 0.006).map((t, i) => (i % 3 === 1 ? t - 0.018 : t));
    const [second, third] = judgedTaps(taps, plan, { allowed: 0.1 }).shape!;
    expect(second!.told).toBe(true);
    expect(Math.abs(second!.late + 0.018)).toBeLessThan(0.005);
    expect(third!.told).toBe(false);
  });

  // From 12.5 ms on, and of a hand that scatters only what lies beyond that too.
  it.each([
    [0, 0.012, false],
    [0, 0.013, true],
    [0, -0.012, false],
    [0, -0.013, true],
    [0.03, 0.015, false],
    [0.03, 0.05, true],
  ])('with a scatter of %f s tells a second note that is %f late: %s', (scatter, late, told) => {
    const taps = scattered(8, scatter).map((t, i) => (i % 3 === 1 ? t + late : t));
    const [second] = judgedTaps(taps, plan, { allowed: 0.1 }).shape!;
    expect(second!.told).toBe(told);
  });

  it('tells the shape of eighths', () => {
    const eighths = timePlan(evenFigure('eighths'), 90, 'bar');
    const taps = eighths.slots.map(({ seconds }, i) => seconds + (i % 2) * 0.05);
    expect(judgedTaps(taps, eighths, { allowed: 0.1 }).shape).toMatchObject([
      { place: 2, told: true },
    ]);
  });

  it('has no shape where the beat is not divided', () => {
    const quarters = timePlan(evenFigure('quarters'), 90, 'bar');
    const taps = quarters.slots.map(({ seconds }) => seconds);
    expect(judgedTaps(taps, quarters, { allowed: 0.1 }).shape).toBeNull();
  });

  it('says lag only as a change since calibration, and with a click', () => {
    const late = due.map((t) => t + 0.09);
    expect(judgedTaps(late, plan, { allowed: 0.1 }).lag).toBeNull();
    expect(judgedTaps(late, planned(null), { allowed: 0.1, lag: 0.07 }).lag).toBeNull();
    expect(judgedTaps(late, plan, { allowed: 0.1, lag: 0.07 }).lag!.change).toBeCloseTo(0.02, 9);
  });

  it('knows no drift without a click', () => {
    expect(
      judgedTaps(
        due.map((t) => t * 1.05),
        planned(null),
        { allowed: 0.1 },
      ).drift,
    ).toBeNull();
  });

  it('says less of fewer notes: the range of eight is wider than that of 48', () => {
    const width = (n: number) => {
      const few = planned('beat', n, 80);
      const { range } = judgedTaps(scattered(11).slice(0, few.slots.length), few, {
        allowed: 0.1,
        error: 0,
      }).evenness!;
      return range[1] / range[0];
    };
    expect(width(12)).toBeGreaterThan(1.5 * width(48));
  });

  it('takes a step of a held note as a fraction of its own length', () => {
    const notes = [0, 1, 2, 3, 4, 5, 6].map((i) => ({
      midi: 60,
      name: 'C',
      at: beats(i, 3),
      length: i === 6 ? beats(2) : beats(1, 3),
    }));
    const phrase = timePlan(phraseFigure({ notes }), 80, 'beat');
    const taps = phrase.slots.map(({ seconds }) => seconds * 1.01);
    const judgement = judgedTaps(taps, phrase, { allowed: 0.06 });
    expect(judgement.evenness!.range[1]).toBeLessThan(1e-6);
    expect(judgement.match.missing).toEqual([]);
  });
});
