import { describe, expect, it } from 'vitest';
import { freeLine } from '../../../src/theory/free/freeLine.ts';
import { overClick, waysOverClick } from '../../../src/theory/free/pulse.ts';
import { parseKey } from '../../../src/theory/key.ts';
import { seeded } from '../../../src/theory/random.ts';
import { highestEven, evenByWeek, type TimeRecord } from '../../../src/theory/timing/progress.ts';
import { normal } from '../timing/player.ts';

const key = parseKey('Bb major')!;
const heard = (midis: readonly number[], step = 0.25) =>
  midis.map((midi, i) => ({ midi, at: i * step }));

describe('a free line', () => {
  it('counts steps, leaps and repeats', () => {
    // B♭ C D F F B♭ A
    const line = freeLine(heard([58, 60, 62, 65, 65, 70, 69]), key);
    expect(line).toMatchObject({ notes: 7, steps: 3, leaps: 2, repeats: 1 });
    expect(line.leaping).toBeCloseTo(1 / 3);
    expect(line.range).toEqual({ low: 58, high: 70, semitones: 12 });
  });

  it('finds the longest run in one direction through notes of the key', () => {
    // Up three steps, down five, and up again over B♮, which the key has not.
    const { run } = freeLine(heard([58, 60, 62, 63, 62, 60, 58, 57, 55, 57, 58, 59, 60]), key);
    expect(run).toEqual({ from: 3, steps: 5, direction: 'down' });
    expect(freeLine(heard([58, 62, 65, 70]), key).run).toBeNull();
  });

  // B♭ C D, F E♭ D, and the first again: two steps each.
  it('tells of several runs as long the first', () => {
    const { run } = freeLine(heard([58, 60, 62, 65, 63, 62, 58, 60, 62]), key);
    expect(run).toEqual({ from: 0, steps: 2, direction: 'up' });
  });

  it('takes the step from ♭6 to 7 for one', () => {
    const minor = parseKey('G harmonic minor')!;
    expect(freeLine(heard([62, 63, 66, 67]), minor).run).toMatchObject({ steps: 3 });
  });

  it('begins its run where it began in the whole line, also behind a gap', () => {
    const broken = heard([58, 65, 58, 69, 57, 58, 60, 62]).map((note, i) =>
      i === 4 ? { ...note, broken: true } : note,
    );
    expect(freeLine(broken, key).run).toEqual({ from: 4, steps: 3, direction: 'up' });
  });

  // B flat to C sharp is a third that is spelled as one; E flat to F sharp in G harmonic minor is a step.
  it('takes a third of three semitones for a leap', () => {
    expect(freeLine(heard([60, 63, 60]), key)).toMatchObject({ steps: 0, leaps: 2 });
    expect(freeLine(heard([63, 66]), parseKey('G harmonic minor')!)).toMatchObject({ steps: 1 });
    expect(freeLine(heard([58, 59, 60, 62, 66]), key)).toMatchObject({ steps: 3, leaps: 1 });
  });

  it('pauses for a second at least, and three times as long as from note to note', () => {
    const gaps = (...all: number[]) => {
      let at = 0;
      const times = [0, ...all.map((gap) => (at += gap))];
      const notes = times.map((time) => ({ midi: 60, at: time }));
      return freeLine(notes, key).pauses.map(({ after, seconds }) => [after, seconds]);
    };
    expect(gaps(0.25, 0.25, 0.25, 1, 0.25)).toEqual([[3, 1]]);
    expect(gaps(0.25, 0.25, 0.25, 0.99, 0.25)).toEqual([]);
    expect(gaps(0.5, 0.5, 0.5, 1.5, 0.5)).toEqual([[3, 1.5]]);
    expect(gaps(0.5, 0.5, 0.5, 1.49, 0.5)).toEqual([]);
  });

  it('has not paused where something came between that could not be told', () => {
    const notes = [0, 0.25, 0.5, 2.5, 2.75, 4.75].map((at) => ({ midi: 60, at }));
    const after = (broken: number) =>
      freeLine(
        notes.map((note, i) => (i === broken ? { ...note, broken: true } : note)),
        key,
      ).pauses.map((pause) => pause.after);
    expect(after(-1)).toEqual([2, 4]);
    expect(after(3)).toEqual([4]);
    expect(after(5)).toEqual([2]);
  });

  it('says pauses, and of nothing nothing', () => {
    const notes = heard([58, 60, 62, 63, 65]).map((note, i) => ({
      ...note,
      at: note.at + (i > 2 ? 2 : 0),
    }));
    expect(freeLine(notes, key).pauses).toEqual([{ after: 2, seconds: 2.25 }]);
    expect(freeLine([], key)).toEqual({
      notes: 0,
      steps: 0,
      leaps: 0,
      repeats: 0,
      leaping: null,
      run: null,
      pauses: [],
      range: null,
    });
    expect(freeLine(heard([58]), key).leaping).toBeNull();
  });
});

/** Onsets over a minute: eighths, triplets or quarters beat by beat, scattered. */
function improvised(seed: number, beat: number, spread: number, lag: number) {
  const chance = seeded(seed);
  return Array.from({ length: Math.floor(60 / beat) }, (_, at) => {
    const division = chance.pick([1, 2, 3, 3]);
    return Array.from({ length: division }, (__, i) => (at + i / division) * beat + lag);
  })
    .flat()
    .map((time) => time + spread * normal(chance))
    .toSorted((a, b) => a - b);
}

describe('evenness of a free line', () => {
  it('is found over a click, whatever the lag', () => {
    let within = 0;
    for (let seed = 1; seed <= 50; seed++) {
      const spread = 0.01 + (seed % 5) * 0.004;
      const onsets = improvised(1_000 + seed, 0.75, spread, (seed % 3) * 0.04);
      const found = overClick(onsets, 0.75)!;
      if (Math.abs(found.spread / spread - 1) <= 0.15) within++;
      expect(Math.abs(found.late - (seed % 3) * 0.04)).toBeLessThan(0.02);
    }
    expect(within).toBeGreaterThanOrEqual(45);
  });

  it('takes what comes a little before a click for that click, and finds which way notes lie off', () => {
    // Sixteen quarters at 60, each 100 ms early; the last is the first of the next beat.
    const early = overClick(
      Array.from({ length: 16 }, (_, i) => i + 1 - 0.1),
      1,
    )!;
    expect(early.late).toBeCloseTo(-0.1, 6);
    expect(early.spread).toBeCloseTo(0, 6);
    expect(early.places.map(({ n, d }) => n / d)).toEqual(
      Array.from({ length: 16 }, (_, i) => i + 1),
    );
    expect(early.divided).toEqual({ 1: 16, 2: 0, 3: 0, 4: 0 });
    const late = overClick(
      Array.from({ length: 24 }, (_, i) => i / 2 + 0.05),
      1,
    )!;
    expect(late.late).toBeCloseTo(0.05, 6);
    expect(late.divided).toMatchObject({ 1: 0, 2: 12 });
  });

  // By a quarter, a third, a half … of a beat later, as far as headphones without a wire are late: .35 s.
  it.each([
    [0.3, 7],
    [0.5, 5],
    [1, 3],
    [1.5, 1],
  ])('may lie over beats of %f s in %i ways where the delay is not known', (beat, ways) => {
    const onsets = Array.from({ length: 24 }, (_, i) => (i * beat) / 2);
    const all = waysOverClick(onsets, beat);
    expect(all).toHaveLength(ways);
    expect(all[0]!.late).toBeCloseTo(0, 6);
  });

  it('takes out the error with which notes are heard', () => {
    const onsets = improvised(5, 0.75, 0.02, 0);
    expect(overClick(onsets, 0.75, { error: 0.012 })!.spread).toBeLessThan(0.018);
  });

  it('says nothing of a few notes', () => {
    expect(overClick([0, 0.5, 1], 0.5)).toBeNull();
  });
});

describe('progress', () => {
  const week = 7 * 24 * 3_600_000;
  const record = (tempo: number, verdict: TimeRecord['verdict'], at: number): TimeRecord => ({
    figure: 'triplets',
    tempo,
    verdict,
    evenness: 0.07,
    at,
  });
  const records = [
    record(66, 'right', 1),
    record(80, 'near', 2),
    record(72, 'right', week + 5),
    record(72, 'right', week + 3),
    record(92, 'wrong', week + 6),
  ];

  it('is the highest tempo at which a figure was even, and when first', () => {
    expect(highestEven(records)).toEqual(new Map([['triplets', { tempo: 72, at: week + 3 }]]));
  });

  it('goes by weeks, and a week without an even one is empty', () => {
    expect(evenByWeek(records, 'triplets', 3 * week, 3)).toEqual([66, 72, null]);
    expect(evenByWeek(records, 'eighths', 3 * week, 1)).toEqual([null]);
    // What was even again at the same tempo was even when it first was, whichever stands first in the log.
    expect(highestEven(records.toReversed()).get('triplets')).toEqual({ tempo: 72, at: week + 3 });
    expect(evenByWeek(records, 'triplets', 2 * week, 2)).toEqual([66, 72]);
    expect(evenByWeek(records, 'triplets', week + 4, 1)).toEqual([72]);
    // The moment itself is the last one of its week, and the same a week before is of the week before.
    expect(evenByWeek(records, 'triplets', week + 3, 2)).toEqual([66, 72]);
    expect(evenByWeek(records, 'triplets', 2 * week + 3, 2)).toEqual([72, 72]);
    expect(evenByWeek(records.slice(3, 4), 'triplets', 2 * week + 3, 2)).toEqual([72, null]);
  });
});
