import { describe, expect, it } from 'vitest';
import { learnPace, newPace, type Pace } from '../../src/memory/pace.ts';
import { gradeOf } from '../../src/practice/grade.ts';
import type { Review } from '../../src/store/review.ts';
import { reviewOf } from '../memory/reviews.ts';

const usual = { right: true, sounded: 0, taps: 1, hidden: false };
const answered = (ms: number, more = {}) => ({ ...usual, ms, ...more });

function paceFrom(reviews: readonly Review[]): Pace {
  const pace = newPace();
  for (const review of reviews) learnPace(pace, review);
  return pace;
}

/** Someone who takes about three seconds. */
const timings = [2600, 2800, 2900, 3000, 3000, 3100, 3300, 3500];
const pace = paceFrom(timings.map((ms) => reviewOf({ ms })));

describe('the grade of an answer', () => {
  it('is 1 when wrong, however fast', () => {
    expect(gradeOf(answered(500, { right: false }), pace)).toBe(1);
  });

  it('is 3 when right at this pace, 2 when slow for this student', () => {
    expect(gradeOf(answered(3200), pace)).toBe(3);
    expect(gradeOf(answered(6000), pace)).toBe(2);
  });

  it('does not call slow whom it hardly knows', () => {
    const seven: Pace = { ...pace, right: pace.right.slice(1) };
    expect(gradeOf(answered(20_000), seven)).toBe(3);
  });

  it('takes no time as meaning anything that a pause or another page has spoiled', () => {
    expect(gradeOf(answered(6000, { hidden: true }), pace)).toBe(3);
    expect(gradeOf(answered(31_000), pace)).toBe(3);
  });

  it('does not count listening as thinking', () => {
    expect(gradeOf(answered(7000, { sounded: 4000 }), pace)).toBe(3);
  });

  it('does not count the taps of a longer answer as thinking', () => {
    const answers = Array.from({ length: 20 }, (_, k) =>
      reviewOf({ ms: 1500 + 800 * 3 + (k % 5) * 100, taps: 3 }),
    );
    const tapping = paceFrom(answers);
    expect(gradeOf(answered(1600 + 800 * 5, { taps: 5 }), tapping)).toBe(3);
    expect(gradeOf(answered(1600 + 800 * 5, { taps: 1 }), tapping)).toBe(2);
  });

  it('takes a tap to last what a tenth of the answers took less than, all their thinking included', () => {
    // From 2.9 s a tap down to 1: two in twenty are below 1.2.
    const answers = Array.from({ length: 20 }, (_, k) =>
      reviewOf({ ms: 3 * (2900 - 100 * k), taps: 3 }),
    );
    const tapping = paceFrom(answers);
    // So of an answer 2.4 s go for its two later taps: .6 to 6.3 s are left to think, 3.45 in the middle.
    const thinking = (ms: number, taps: number) =>
      gradeOf(answered(ms + (taps - 1) * 1200, { taps }), tapping);
    expect([1, 3, 6].map((taps) => thinking(3500, taps))).toEqual([3, 3, 3]);
    expect([1, 3, 6].map((taps) => thinking(9000, taps))).toEqual([2, 2, 2]);
    expect(thinking(5600, 12)).toBe(thinking(5600, 1));
  });

  // Three of many quick taps, which tell that a tap takes .5 s; all others think for 3 s, give or take little.
  it.each([
    [2, 3400, 3],
    [2, 3600, 2],
    [1, 3400, 3],
    [1, 3600, 2],
    [12, 3400, 3],
    [12, 3600, 2],
  ])(
    'is 2 from a sixth above the middle where all are alike: %i taps, %i ms',
    (taps, ms, grade) => {
      const tap = 500;
      const quick = Array.from({ length: 3 }, () => reviewOf({ ms: 12 * tap, taps: 12 }));
      const even = Array.from({ length: 17 }, (_, k) => reviewOf({ ms: 3000 + k + tap, taps: 2 }));
      const answer = answered(ms + (taps - 1) * tap, { taps });
      expect(gradeOf(answer, paceFrom([...even, ...quick]))).toBe(grade);
    },
  );

  // A tap is 1 s by all of them: of three the two later ones are taken off, and 1 s is left to think. 15 % more is slow.
  it('takes off the taps after the first, not the first', () => {
    const tapping = paceFrom(Array.from({ length: 10 }, () => reviewOf({ ms: 3000, taps: 3 })));
    expect(gradeOf(answered(3120, { taps: 3 }), tapping)).toBe(3);
    expect(gradeOf(answered(3200, { taps: 3 }), tapping)).toBe(2);
    expect(gradeOf(answered(1200, { taps: 1 }), tapping)).toBe(2);
  });

  it('takes what one tap answers as telling nothing of how long a tap takes', () => {
    const single = Array.from({ length: 3 }, () => reviewOf({ ms: 600, taps: 1 }));
    const longer = Array.from({ length: 17 }, () => reviewOf({ ms: 6000, taps: 3 }));
    // Of five taps at 2 s four are taken off: 1 s to think, between the .6 and the 2 of the others.
    const five = answered(9000, { taps: 5 });
    expect(gradeOf(five, paceFrom([...single, ...longer]))).toBe(3);
  });

  it('goes by the last sixty right answers', () => {
    const slow = paceFrom(Array.from({ length: 80 }, () => reviewOf({ ms: 9000 })));
    expect(slow.right).toHaveLength(60);
    expect(gradeOf(answered(9100), slow)).toBe(3);
  });
});
