import { expect, it } from 'vitest';
import type { Event } from '../../src/listening/event.ts';
import {
  candidateOf,
  heardBeside,
  heardFor,
  playerLag,
  readingsOf,
} from '../../src/listening/readings.ts';
import { HIGHEST_HEARD, LOWEST_HEARD } from '../../src/listening/salience.ts';

/** Something that begins at a time, with such log odds of some notes and hardly any of the others. */
function eventAt(time: number, of: Readonly<Record<number, number>>): Event {
  const odds = new Float64Array(HIGHEST_HEARD - LOWEST_HEARD + 1).fill(-20);
  for (const [midi, one] of Object.entries(of)) odds[Number(midi) - LOWEST_HEARD] = one;
  return { time, plucked: time, odds, jump: 2, explained: 1 };
}
const read = (event: Event, notes: readonly number[], due: readonly number[] = []) =>
  readingsOf(candidateOf(event, notes, due), notes, due);

// A fret or two beside is likelier than any other note, and least is held against an octave, up or down.
it.each([
  [59, 2.7],
  [61, 2.7],
  [62, 2.7],
  [58, 2.7],
  [63, 3.4],
  [57, 3.4],
  [72, 1],
  [48, 1],
  [67, 3.4],
  [84, 3.4],
])('%i heard in the place of 60 costs %f', (midi, cost) => {
  const { wrong, right, own } = read(eventAt(1, { [midi]: 4 }), [60]);
  expect(wrong[0]).toBeCloseTo(4 - cost, 9);
  expect(right[0]).toBeCloseTo(-20 + 0.8, 9);
  expect(own[0]).toBe(wrong[0]);
});

it('a note as asked is likelier than its features know; another is what is likeliest beside it', () => {
  const { right, wrong } = read(eventAt(1, { 60: 3, 62: 1 }), [60, 62]);
  expect([...right]).toEqual([3.8, 1.8]);
  // In the place of 60 the next likeliest, 62; in that of 62 the likeliest, 60.
  expect([...wrong]).toEqual([1 - 2.7, 3 - 2.7].map((one) => expect.closeTo(one, 9)));
  const candidate = candidateOf(eventAt(1, { 60: 3, 62: 1 }), [], []);
  expect([60, 62, 64].map((midi) => heardFor(candidate, midi))).toEqual([62, 60, 60]);
});

it('beside what is asked it is the likeliest note, or the one before once more where that is as likely', () => {
  const { extra } = read(eventAt(1, { 60: 3, 62: 1 }), [62, 60]);
  expect([...extra]).toEqual([-0.5, -0.5, -0.5]);
  const candidate = candidateOf(eventAt(1, { 60: 3, 62: 3 }), [], []);
  expect([undefined, 62, 64].map((after) => heardBeside(candidate, after))).toEqual([60, 62, 60]);
});

it('off its time a note costs half the square of it in widths of .4 of a step, and two at most', () => {
  const due = [1, 1.5, 2];
  const notes = [60, 62, 64];
  const cost = (time: number) => 4.8 - read(eventAt(time, { 60: 4 }), notes, due).right[0]!;
  expect([1, 1.1, 0.9, 1.2, 1.4, 3].map(cost)).toEqual(
    [0, 0.125, 0.125, 0.5, 2, 2].map((one) => expect.closeTo(one, 9)),
  );
});

it('how late the player is tell what is surely in place, from the middle of it', () => {
  const due = [1, 1.5, 2];
  const notes = [60, 62, 60];
  const lag = (time: number, of: Record<number, number>) =>
    candidateOf(eventAt(time, of), notes, due).lag;
  expect(lag(1.1, { 60: 2 })).toBeCloseTo(0.1, 9);
  expect(lag(1.8, { 60: 2 })).toBeCloseTo(-0.2, 9);
  expect(lag(1.1, { 60: 1.9 })).toBeNull();
  expect(lag(1.1, { 65: 4 })).toBeNull();
  const heard = [0.3, 0.1, 0.12].map((late, i) =>
    candidateOf(eventAt(due[i]! + late, { [notes[i]!]: 3 }), notes, due),
  );
  expect(playerLag(heard)).toBeCloseTo(0.12, 9);
  expect(playerLag([])).toBe(0);
});
