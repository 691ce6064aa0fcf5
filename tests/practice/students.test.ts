/** Simulated students over days and weeks, few enough for every run; `npm run simulate` has many. */
import { describe, expect, it } from 'vitest';
import { learn, emptyMemory } from '../../src/memory/memory.ts';
import { isEnough } from '../../src/practice/enough.ts';
import { answerCard, metCard, nextCard } from '../../src/practice/next.ts';
import { pictureOf } from '../../src/practice/picture.ts';
import { reportOf } from '../../src/practice/report.ts';
import { type Round, secondsLeft, startRound } from '../../src/practice/round.ts';
import { ours, roundRobinOverKinds } from '../bench/simulation/policies.ts';
import { play } from '../bench/simulation/run.ts';
import { allOrNone, multiscale, powerLaw, weakPowerLaw } from '../bench/simulation/students.ts';
import { DAY, deckOf150, KINDS, START } from '../bench/simulation/world.ts';
import { reviewOf } from '../memory/reviews.ts';

const items = deckOf150();
const LAWS = { powerLaw, weakPowerLaw, multiscale, allOrNone };

const course = { items, minutes: 4, spread: 1.3 };

it.each(Object.entries(LAWS))(
  'at least every second miss of the first week comes again in its own round: %s',
  (_, make) => {
    const weeks = [3300, 3301, 3302, 3303].map(
      (seed) => play({ ...course, make, policy: ours, seed, weeks: 1 }).firstWeek,
    );
    const sum = (of: 'missed' | 'back') => weeks.reduce((all, week) => all + week[of], 0);
    expect(sum('missed')).toBeGreaterThan(20);
    expect(sum('back')).toBeGreaterThanOrEqual(sum('missed') / 2);
  },
);

it.each(Object.entries(LAWS))(
  'no kind is known more than a point less than if the kinds were asked by turns: %s',
  (_, make) => {
    const [theirs, byTurns] = [ours, roundRobinOverKinds].map((policy) =>
      [3310, 3311].map((seed) => play({ ...course, make, policy, seed }).byKind),
    );
    KINDS.forEach((_kind, k) => {
      const mean = (all: typeof theirs) =>
        all!.reduce((sum, one) => sum + one[k]!, 0) / all!.length;
      expect(mean(theirs)).toBeGreaterThan(mean(byTurns) - 1);
    });
  },
);

/** Six minutes a day for so many days, every answer wrong; what each day was, and what was then remembered. */
function nothingRight(days: number) {
  const memory = emptyMemory();
  const each: { met: number; asked: number; enough: boolean; secondsLeft: number }[] = [];
  let n = 0;
  for (let day = 0; day < days; day++) {
    let now = START + day * DAY;
    const enough = isEnough(items, memory, now, null);
    const goal = { minutes: 6 };
    let round: Round = startRound({ deck: 'lesson', goal, seed: day, now });
    for (let next; (next = nextCard(round, items, memory, now));) {
      now += 10_000;
      if (next.meet) round = metCard(next.round, now);
      else {
        const verdict = { right: false, takenFor: null };
        learn(memory, reviewOf({ n: ++n, item: next.item.id, at: now, ...verdict }));
        round = answerCard(next.round, items, verdict, now);
      }
    }
    const left = secondsLeft(round)!;
    each.push({ met: round.met.length, asked: round.asked.length, enough, secondsLeft: left });
    expect(isEnough(items, memory, now, null)).toBe(false);
  }
  return { memory, each, now: START + (days - 1) * DAY + 3_600_000 };
}

describe('a student with nothing right', () => {
  const { memory, each, now } = nothingRight(7);

  it('never hears that it is enough for today', () => {
    expect(each.map(({ enough }) => enough)).toEqual(each.map(() => false));
  });

  it('gets few items, shown again, and the days after too', () => {
    expect(memory.items.size).toBeLessThanOrEqual(12);
    for (const day of each.slice(3)) {
      expect(day.met).toBeGreaterThanOrEqual(4);
      expect(day.asked).toBeGreaterThanOrEqual(5);
    }
  });

  it('has a word to the teacher in the report', () => {
    const told = {
      items,
      memory,
      reviews: [],
      questions: [],
      lesson: null,
      timings: {},
      minutes: [],
    };
    const report = reportOf(told, { deck: 1, sender: 1, question: '', name: '' }, now, 0);
    expect(pictureOf(report, items).littleStays).toBe(true);
    expect(pictureOf(report, items).all.recall).toBeLessThan(0.1);
  });
});
