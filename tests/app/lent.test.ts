/** What of the settings and of tuning up reaches the ear, and how what it tells comes back. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { makeReady, offset } from '../../src/app/guitar/inHand.ts';
import { hearLine, LENT } from '../../src/app/guitar/lent.ts';
import { tunedBefore } from '../../src/app/guitar/tunedBefore.ts';
import { USUAL, type GuitarSettings } from '../../src/app/settings.ts';
import { settings } from '../../src/app/state.ts';
import type { Follower, FreeListener, FreeNote, Performance } from '../../src/listening/index.ts';
import { GUITAR } from '../../src/neck/instrument.ts';

const ear = vi.hoisted(() => {
  Object.assign(globalThis, {
    document: { documentElement: { dataset: {} }, addEventListener() {} },
  });
  return {
    asked: [] as unknown[],
    follower: {} as unknown,
    context: { currentTime: 7, baseLatency: 0 } as unknown,
  };
});
const task = { stop() {} };
vi.mock('../../src/listening/tasks.ts', () => ({
  follow: (expected: unknown, follower: unknown) => {
    ear.asked.push(expected);
    ear.follower = follower;
    return task;
  },
  hearFreely: (playing: unknown, listener: unknown) => {
    ear.asked.push(playing);
    ear.follower = listener;
    return task;
  },
  hearStrikes: (onStrike: unknown) => {
    ear.follower = onStrike;
    return task;
  },
}));
vi.mock('../../src/sound/index.ts', async (original) => ({
  ...(await original<typeof import('../../src/sound/index.ts')>()),
  audioContext: () => ear.context,
}));

const choose = (guitar: Partial<GuitarSettings>, reference = 440) => {
  settings.value = { ...USUAL, reference, guitar: { ...USUAL.guitar, ...guitar } };
};
beforeEach(() => {
  ear.asked = [];
  offset.value = null;
  choose({});
});
afterEach(() => vi.restoreAllMocks());

const NOTES = { notes: [58, 62], order: 'given' } as const;
const heard: Performance = {
  notes: [
    { verdict: 'right', time: 2 },
    { verdict: 'wrong', time: 3, heard: 60 },
  ],
  extras: [{ heard: 64, time: 2.5, after: 0 }],
  restarts: 0,
  over: true,
};

describe('the guitar as cards are lent it', () => {
  it('is followed at the reference pitch, as it was tuned, and as late as the phone is', () => {
    LENT.follow({ ...NOTES, due: [1, 1.5] }, {});
    expect(ear.asked).toEqual([{ ...NOTES, due: [1, 1.5], offset: 0, reference: 440 }]);
    choose({ delay: 0.25 }, 442);
    makeReady(-12, LENT);
    LENT.follow({ ...NOTES, due: [1, 1.5] }, {});
    expect(ear.asked[1]).toEqual({ ...NOTES, due: [1.25, 1.75], offset: -12, reference: 442 });
    LENT.follow(NOTES, {});
    expect(ear.asked[2]).toEqual({ ...NOTES, offset: -12, reference: 442 });
  });

  it('tells when things were played, not when they came in', () => {
    choose({ delay: 0.25 });
    const told = {
      onRight: vi.fn<(...of: unknown[]) => void>(),
      onSettled: vi.fn<(of: unknown) => void>(),
      onOver: vi.fn<(of: unknown) => void>(),
    };
    LENT.follow(NOTES, told);
    const follower = ear.follower as Required<Follower>;
    follower.onRight(1, 3);
    follower.onSettled(heard);
    follower.onOver(heard);
    const earlier = {
      ...heard,
      notes: [
        { verdict: 'right', time: 1.75 },
        { verdict: 'wrong', time: 2.75, heard: 60 },
      ],
      extras: [{ heard: 64, time: 2.25, after: 0 }],
    };
    expect(told.onRight).toHaveBeenCalledWith(1, 2.75);
    expect(told.onSettled).toHaveBeenCalledWith(earlier);
    expect(told.onOver).toHaveBeenCalledWith(earlier);
  });

  it('is heard so where nothing is asked of it too', () => {
    choose({ delay: 0.25 }, 438);
    makeReady(9, LENT);
    const told = { onNote: vi.fn<(of: unknown) => void>(), onOver: vi.fn<(of: unknown) => void>() };
    hearLine(told);
    expect(ear.asked).toEqual([{ offset: 9, reference: 438 }]);
    const note: FreeNote = { time: 2, heard: 62, confidence: 0.9 };
    (ear.follower as Required<FreeListener>).onNote(note);
    (ear.follower as Required<FreeListener>).onOver([note]);
    expect(told.onNote).toHaveBeenCalledWith({ ...note, time: 1.75 });
    expect(told.onOver).toHaveBeenCalledWith([{ ...note, time: 1.75 }]);
  });

  it('tells strokes on the clock of the page, without the delay', () => {
    choose({ delay: 0.25 });
    vi.spyOn(performance, 'now').mockReturnValue(50_000);
    const strokes: number[] = [];
    LENT.strikes((at) => strokes.push(at));
    (ear.follower as (time: number) => void)(6.5);
    expect(strokes).toEqual([49_250]);
  });

  it('is measured once its delay is known, though that be none', () => {
    expect(LENT.isMeasured).toBe(false);
    choose({ delay: 0 });
    expect(LENT.isMeasured).toBe(true);
    expect(LENT.now()).toBe(7);
  });
});

describe('how a guitar was tuned up', () => {
  const noon = new Date(2026, 10, 29, 12).getTime();
  const hour = 3_600_000;
  const tuned = { at: noon, instrument: 'guitar', offset: -8 };

  it.each([
    ['an hour later', noon + hour, GUITAR, -8],
    ['the same night', noon + 15 * hour, GUITAR, -8],
    ['the next morning', noon + 17 * hour, GUITAR, null],
    ['with a capo since', noon + hour, { ...GUITAR, capo: 2 }, null],
    ['in the left hand', noon + hour, { ...GUITAR, leftHanded: true }, -8],
  ])('is known %s', (_, now, instrument, cents) => {
    choose({ tuned });
    expect(tunedBefore(instrument, now)).toBe(cents);
  });

  it('is as in this round where that is known', () => {
    expect(tunedBefore(GUITAR, noon)).toBeNull();
    choose({ tuned });
    makeReady(3, LENT);
    expect(tunedBefore(GUITAR, noon)).toBe(3);
  });
});
