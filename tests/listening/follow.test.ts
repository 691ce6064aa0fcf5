import { describe, expect, it } from 'vitest';
import type { Event } from '../../src/listening/event.ts';
import { LineFollower, SetFollower } from '../../src/listening/follow.ts';
import { HIGHEST_HEARD, LOWEST_HEARD } from '../../src/listening/salience.ts';

/** Something that begins at a time, sharply and as a plain string unless it is said otherwise. */
function eventAt(
  time: number,
  of: Readonly<Record<number, number>>,
  { jump = 2, explained = 1 } = {},
): Event {
  const odds = new Float64Array(HIGHEST_HEARD - LOWEST_HEARD + 1).fill(-20);
  for (const [midi, one] of Object.entries(of)) odds[Number(midi) - LOWEST_HEARD] = one;
  return { time, plucked: time, odds, jump, explained };
}

/** What is made of the third note, 64, of a line in even steps. */
function thirdOf(of: Readonly<Record<number, number>>) {
  const line = [60, 62, 64, 65, 67, 69];
  const follower = new LineFollower(line);
  line.forEach((midi, i) => follower.add(eventAt(i, i === 2 ? of : { [midi]: 5 }), false));
  return follower.settle(99, true).notes[2];
}

describe('a line', () => {
  it('takes an octave for a wrong note where it is plainer than another has to be', () => {
    expect(thirdOf({ 64: 5 })).toMatchObject({ verdict: 'right' });
    // Log odds of 4 less what another costs, a semitone beside (2.7) or an octave (1), against those of 64 and .8 more.
    expect(thirdOf({ 64: -0.6, 65: 4 })).toMatchObject({ verdict: 'wrong', heard: 65 });
    expect(thirdOf({ 64: -0.3, 65: 4 })).toEqual({ verdict: 'unheard' });
    expect(thirdOf({ 64: 0.1, 76: 4 })).toMatchObject({ verdict: 'wrong', heard: 76 });
    expect(thirdOf({ 64: 0.3, 76: 4 })).toEqual({ verdict: 'unheard' });
  });
});

/** What comes of events, one after the other, where these notes may come in any order. */
function settled(notes: readonly number[], events: readonly Event[], finished = false) {
  const follower = new SetFollower(notes);
  for (const event of events) follower.add(event, true);
  return follower.settle(99, finished);
}
const verdicts = ({ notes }: ReturnType<typeof settled>) =>
  notes.map((note) => note?.verdict ?? null);

describe('notes in any order', () => {
  it.each([
    [{ 60: 0.5 }, ['right', null]],
    [{ 60: 0.4 }, [null, null]],
    [{ 64: 3 }, [null, 'right']],
    // Another note of those asked may be as likely; one that is not asked has to be less so.
    [{ 60: 3, 64: 2.9 }, ['right', null]],
    [{ 60: 3, 65: 3.4 }, ['right', null]],
    [{ 60: 3, 65: 3.6 }, [null, null]],
  ] as const)('of one with log odds %o are %o', (odds, told) => {
    expect(verdicts(settled([60, 64], [eventAt(1, odds)]))).toEqual(told);
  });

  it('are each right once, and what stands already is no pluck that could not be told', () => {
    const twice = settled([60, 64], [eventAt(1, { 60: 3 }), eventAt(2, { 60: 3 })]);
    expect(verdicts(twice)).toEqual(['right', null]);
    expect(twice).toMatchObject({ extras: [], untold: 0, over: false });
  });

  it.each([
    [{ 70: 2.5 }, {}, [70], 0],
    [{ 70: 2.4 }, {}, [], 1],
    [{ 70: 2.5 }, { explained: 0.2 }, [], 1],
    [{ 70: -0.6 }, {}, [], 1],
    [{ 70: -0.7 }, {}, [], 0],
    [{ 70: 1 }, { jump: 0.9 }, [], 0],
  ])(
    'beside them log odds of %o, %o, come to %o and %i that cannot be told',
    (odds, how, heard, untold) => {
      const told = settled([60], [eventAt(1, odds, how)]);
      expect(told.extras.map((extra) => extra.heard)).toEqual(heard);
      expect(told.untold).toBe(untold);
    },
  );

  // What comes a quarter of a second after a pluck belongs to it.
  it.each([
    [0.2, 0],
    [0.24, 0],
    [0.26, 1],
  ])('%f s after one that was told hold %i more that cannot be', (later, untold) => {
    for (const before of [{ 60: 3 }, { 70: 4 }])
      expect(settled([60], [eventAt(1, before), eventAt(1 + later, { 67: 1 })]).untold).toBe(
        untold,
      );
    const plucks = [1, 1 + later].map((time) => eventAt(time, { 67: 1 }));
    expect(settled([60], plucks).untold).toBe(1 + untold);
  });

  it('are missing at the end where nothing spoke for them and anything was heard', () => {
    const end = (...events: Event[]) => verdicts(settled([60, 64], events, true));
    expect(end()).toEqual(['unheard', 'unheard']);
    expect(end(eventAt(1, { 60: 3 }))).toEqual(['right', 'missing']);
    expect(end(eventAt(1, { 60: 3 }), eventAt(2, { 64: -3.9 }))).toEqual(['right', 'unheard']);
    expect(end(eventAt(1, { 70: 4 }))).toEqual(['missing', 'missing']);
  });
});
