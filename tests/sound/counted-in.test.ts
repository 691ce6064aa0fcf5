/** The bar that is counted in before a line is played: four clicks a beat apart, and listening from before its bar line. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { countedIn, READING } from '../../src/cards/playing/countIn.ts';
import type { PlayOptions } from '../../src/sound/index.ts';
import type { Sounding } from '../../src/sound/sounding.ts';

const played = vi.hoisted(() => ({
  sounding: undefined as Sounding | undefined,
  options: undefined as PlayOptions | undefined,
  end: () => {},
  stopped: 0,
}));

vi.mock('../../src/sound/index.ts', () => ({
  play(sounding: Sounding, options: PlayOptions) {
    const done = new Promise<void>((resolve) => (played.end = resolve));
    Object.assign(played, { sounding, options });
    return { done, stop: () => played.stopped++ };
  },
}));

beforeEach(() => {
  Object.assign(played, { sounding: undefined, options: undefined, stopped: 0 });
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const watched = () => {
  const told: unknown[] = [];
  const counting = {
    count: (beat: number) => told.push(beat),
    sounded: () => told.push('sounded'),
    over: (left: number) => told.push({ left }),
  };
  return { told, counting };
};

// At 60 a beat is a second: the last click's note is over at 3.3 of 4 beats.
test.each([
  [60, 0.7],
  [84, 0.5],
  [120, 0.35],
])(
  'at %i it is four clicks without a note, and ends %f s before the first note',
  async (tempo, left) => {
    const { told, counting } = watched();
    countedIn(tempo, 2000, counting);
    vi.advanceTimersByTime(1999);
    expect(played.sounding).toBeUndefined();
    vi.advanceTimersByTime(1);
    expect(played.sounding!.tempo).toBe(tempo);
    expect(played.sounding!.notes.map(({ at }) => at)).toEqual([0, 1, 2, 3]);
    expect(played.options).toMatchObject({ click: true, muted: true });
    for (const beat of [0, 1, 2, 3]) played.options!.onNote!(beat);
    played.end();
    await vi.runAllTimersAsync();
    expect(told).toEqual(['sounded', 0, 1, 2, 3, { left: expect.closeTo(left, 9) }]);
    const { at, length } = played.sounding!.notes.at(-1)!;
    expect(((at + length) * 60) / tempo + left).toBeCloseTo((4 * 60) / tempo, 9);
  },
);

test('it is stopped, and then nothing is listened for', async () => {
  const { told, counting } = watched();
  const stop = countedIn(60, 0, counting);
  vi.advanceTimersByTime(0);
  stop();
  played.end();
  await vi.runAllTimersAsync();
  expect(told).toEqual(['sounded']);
  expect(played.stopped).toBe(1);
  const unbegun = countedIn(60, 500, counting);
  unbegun();
  vi.advanceTimersByTime(1000);
  expect(told).toEqual(['sounded']);
});

test('a card is read two seconds before it, and less when it is played again', () => {
  expect(READING).toEqual([2000, 600]);
});
