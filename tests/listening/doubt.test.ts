import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../src/listening/align.ts';
import { doubted } from '../../src/listening/doubt.ts';

/** Notes heard at these times, seconds; null where one was not. */
const heardAt = (...times: (number | null)[]) => {
  const heard = times.filter((time) => time !== null);
  return {
    notes: times.map((time) => ({
      label: time === null ? 'missing' : 'right',
      event: time === null ? -1 : heard.indexOf(time),
      margin: 9,
    })),
    candidates: heard.map((time) => ({ event: { time } })),
    events: heard.map(() => ({ label: 'right', note: 0, margin: 9 })),
    begins: 0,
  } as unknown as Alignment;
};

describe('a note that was not heard', () => {
  it('may have been played where its neighbours are more than one and a half steps apart', () => {
    expect(doubted(heardAt(0, 1, 2, 3, null, 5), 60, 4)).toBe(true);
    expect(doubted(heardAt(0, 1, 2, 3, null, 4.6), 60, 4)).toBe(true);
    expect(doubted(heardAt(0, 1, 2, 3, null, 4.5), 60, 4)).toBe(false);
    expect(doubted(heardAt(0, 1, 2, 3, null, 4), 60, 4)).toBe(false);
  });

  it('is not doubted before the first or behind the last note where nothing else was heard', () => {
    expect(doubted(heardAt(null, 1, 2, 3, 4), 60, 0)).toBe(false);
    expect(doubted(heardAt(0, 1, 2, 3, null), 60, 4)).toBe(false);
  });

  it('is not told by time alone where three steps or fewer tell how long one is', () => {
    expect(doubted(heardAt(0, 1, 2, null, 4), 60, 3)).toBe(false);
  });
});
