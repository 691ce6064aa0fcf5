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

  it('may have been played where too little was heard to tell how long a step is', () => {
    const { notes, ...heard } = heardAt(0, null, 2);
    const goesOn = { ...heard, notes: [...notes, { label: 'open', event: -1, margin: 0 }] };
    expect(doubted(goesOn as unknown as Alignment, 60, 1)).toBe(true);
    // Nothing more is to come that could tell.
    expect(doubted(heardAt(0, null, 2), 60, 1)).toBe(false);
    // One step is enough, and of two the shorter one counts.
    expect(doubted(heardAt(0, null, 2, 3), 60, 1)).toBe(true);
    expect(doubted(heardAt(0, null, 2, 4), 60, 1)).toBe(false);
    expect(doubted(heardAt(0, null, 2, 4, 5), 60, 1)).toBe(true);
  });
});

describe('a note that was heard as another', () => {
  it('may have been played beside it where its neighbours are more than two and a half steps apart', () => {
    expect(doubted(heardAt(0, 1, 2, 3, 5), 60, 3)).toBe(true);
    expect(doubted(heardAt(0, 1, 2, 3, 4.5), 60, 3)).toBe(false);
    expect(doubted(heardAt(0, 1, 2, 3, 4), 60, 3)).toBe(false);
  });
});
