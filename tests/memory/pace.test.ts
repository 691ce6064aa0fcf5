import { describe, expect, it } from 'vitest';
import { learnPace, newPace, noPace, timingOf } from '../../src/memory/pace.ts';
import { reviewOf } from './reviews.ts';

describe('the pace', () => {
  it('times an answer from the end of what the card sounded to its last tap', () => {
    const timed = { ms: 7500, sounded: 2000, taps: 3, hidden: false };
    expect(timingOf(timed)).toEqual({ seconds: 5.5, taps: 3 });
    expect(timingOf({ ...timed, sounded: 0, taps: 0 })).toEqual({ seconds: 7.5, taps: 1 });
    expect(timingOf({ ...timed, hidden: true })).toBeNull();
    expect(timingOf({ ...timed, sounded: 7500 })).toEqual({ seconds: 0, taps: 3 });
    expect(timingOf({ ...timed, sounded: 7501 })).toBeNull();
    expect(timingOf({ ...timed, ms: 32_000 })).toEqual({ seconds: 30, taps: 3 });
    expect(timingOf({ ...timed, ms: 32_001 })).toBeNull();
  });

  it('keeps what a card costs as a mean that follows a twentieth of the way, its sound counted in', () => {
    const pace = newPace();
    expect(pace).toMatchObject({ right: [], seconds: { right: 6, wrong: 10 } });
    expect(noPace).toEqual({ right: [], seconds: { right: 6, wrong: 10 } });
    learnPace(pace, reviewOf({ ms: 16_000, sounded: 4000 }));
    expect(pace.seconds.right).toBeCloseTo(6.5, 9);
    learnPace(pace, reviewOf({ ms: 4000, right: false }));
    expect(pace.seconds.wrong).toBeCloseTo(9.7, 9);
    // Who was away is not followed.
    learnPace(pace, reviewOf({ ms: 40_000 }));
    expect(pace.seconds.right).toBeCloseTo(6.5, 9);
    expect(pace.right).toEqual([{ seconds: 12, taps: 1 }]);
  });

  it('never takes a card for one that costs less than a second', () => {
    const pace = newPace();
    for (let k = 0; k < 200; k++) {
      learnPace(pace, reviewOf({ ms: 100 }));
      learnPace(pace, reviewOf({ ms: 100, right: false }));
    }
    expect(pace.seconds).toEqual({ right: 1, wrong: 1 });
  });

  it('keeps the last sixty right answers, in place of the oldest', () => {
    const pace = newPace();
    for (let k = 1; k <= 62; k++) learnPace(pace, reviewOf({ ms: 100 * k }));
    expect(pace.right).toHaveLength(60);
    expect(pace.right.slice(0, 3).map(({ seconds }) => seconds)).toEqual([6.1, 6.2, 0.3]);
  });
});
