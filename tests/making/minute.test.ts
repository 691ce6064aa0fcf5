import { describe, expect, it } from 'vitest';
import type { Deck } from '../../src/decks/deck.ts';
import { readDeck } from '../../src/decks/document.ts';
import { advice } from '../../src/making/advice.ts';
import { isSure, toldOf, type MinuteTold } from '../../src/making/minute.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { parseKey } from '../../src/theory/key.ts';
import { toNumber } from '../../src/theory/rhythm.ts';

const key = parseKey('Bb major')!;
const tempo = 60;

/** Eighths of which those at the given places were not sure. */
const told = (midis: readonly number[], unsure: readonly number[] = []): MinuteTold | null => {
  const heard = midis.map((midi, i) => ({
    heard: midi,
    time: i / 2,
    confidence: unsure.includes(i) ? 0.4 : 0.95,
  }));
  return toldOf({ heard, isMeasured: true, tempo, key, instrument: GUITAR });
};

const SCALE = [58, 60, 62, 63, 65, 67, 69, 70];
const LEAPING = [58, 65, 62, 69, 65, 60, 67, 63, 70, 67, 62, 58, 65, 60];

describe('a free minute', () => {
  it('is told from twelve notes on', () => {
    expect(told(LEAPING.slice(0, 11))).toBeNull();
    expect(told(LEAPING.slice(0, 12))!.line).toMatchObject({ notes: 12, leaps: 11, steps: 0 });
  });

  it('leaves out what is not sure, and counts no move to or from it', () => {
    const whole = told([...SCALE, ...SCALE])!;
    expect(whole.line).toMatchObject({ steps: 14, leaps: 1, run: { steps: 7 } });
    expect(whole.leftOut).toBe(0);
    const gapped = told([...SCALE, ...SCALE], [3, 12])!;
    expect(gapped.leftOut).toBe(2);
    // Each takes two moves away; across the gap there is none.
    expect(gapped.line).toMatchObject({ notes: 14, steps: 10, leaps: 1, run: { steps: 3 } });
    expect(gapped.explained.phrase.notes).toHaveLength(14);
  });

  it('tells what is doubtful between two notes that are sure, and of several doubtful ones none', () => {
    const heard = (unsure: readonly number[]) =>
      LEAPING.map((midi, i) => ({
        heard: midi,
        time: i / 2,
        confidence: unsure.includes(i) ? 0.6 : 0.95,
      }));
    const leftOut = (...unsure: number[]) =>
      toldOf({ heard: heard(unsure), isMeasured: true, tempo, key, instrument: GUITAR })!.leftOut;
    expect(leftOut(3, 8)).toBe(0);
    expect(leftOut(5, 6)).toBe(2);
  });

  it('lies on the neck as it comes easiest to the hand', () => {
    expect(told(LEAPING)!.along!.frets[1]).toBeLessThanOrEqual(8);
    expect(told(LEAPING.map((midi) => midi - 30))!.along).toBeNull();
  });
});

/** Arpeggios of the key, three notes to a beat or four to two. */
const TRIADS = [60, 63, 67, 65, 69, 72, 58, 62, 65, 63, 67, 70, 69, 65, 62, 67, 63, 60];
const SEVENTHS = [60, 63, 67, 70, 75, 72, 69, 65, 62, 65, 69, 72, 74, 70, 67, 63, 57, 60, 63, 67];

describe('a line over its click', () => {
  const over = (
    midis: readonly number[],
    {
      toABeat,
      bpm,
      late,
      isMeasured,
    }: Record<'toABeat' | 'bpm' | 'late', number> & { isMeasured: boolean },
  ) => {
    const heard = midis.map((midi, i) => ({
      heard: midi,
      time: ((i / toABeat) * 60) / bpm + late + 0.008 * Math.sin(2.3 * i),
      confidence: 0.95,
    }));
    const { explained, outlined } = toldOf({
      heard,
      isMeasured,
      tempo: bpm,
      key,
      instrument: GUITAR,
    })!;
    const at = explained.phrase.notes.map((note) => toNumber(note.at));
    return { at, outlined: outlined.map(({ chord, times }) => `${chord.degree}x${times}`) };
  };
  const cases = [90, 120, 160].flatMap((bpm) =>
    [0.18, 0.24, 0.3].flatMap((late) => [
      { midis: TRIADS, toABeat: 3, bpm, late },
      { midis: SEVENTHS, toABeat: 2, bpm, late },
    ]),
  );

  it.each(cases)(
    'is read on its beats, heard $late s late by nobody knows how much: $toABeat to a beat at $bpm',
    ({ midis, ...how }) => {
      const { at, outlined } = over(midis, { ...how, isMeasured: false });
      at.forEach((place, i) => expect(place).toBeCloseTo(i / how.toABeat));
      const inTime = over(midis, { ...how, late: 0, isMeasured: true });
      expect(outlined).toEqual(inTime.outlined);
    },
  );

  it('stays off its beats where the delay is known', () => {
    const late = (0.5 * 60) / 120;
    const off = over(SEVENTHS, { toABeat: 2, bpm: 120, late, isMeasured: true });
    off.at.forEach((place, i) => expect(place).toBeCloseTo(0.5 + i / 2));
    const unknown = over(SEVENTHS, { toABeat: 2, bpm: 120, late, isMeasured: false });
    expect(unknown.at[0]).toBe(0);
  });
});

const lesson = (document: object): Deck => {
  const read = readDeck({ version: 2, title: 'Quay', key: 'Bb major', drills: [], ...document });
  if ('fault' in read) throw new Error(read.fault);
  return read.deck;
};
const spot = { kind: 'spot', degrees: [1, 4, 5], sizes: ['triad'], strings: ['5-4'] };
const sixths = { phrases: [{ tempo: 60, notes: ['Bb3', 'G4', 'A3', 'F4', 'D4', 'F4'] }] };

describe('one thing to try after it', () => {
  const running = told([...SCALE, ...SCALE.toReversed()])!;

  it('is what the lesson’s phrase leaps by, for whoever runs', () => {
    expect(advice(running, lesson(sixths))).toBe(
      'You ran seven steps up: try the sixths in the phrase.',
    );
  });

  it('is an arpeggio that the lesson asks, where it has no phrase', () => {
    const deck = lesson({ drills: [{ ...spot, frets: [1, 8] }] });
    expect(advice(running, deck)).toBe(
      'You ran seven steps up: try the arpeggio of I, which this lesson asks.',
    );
    const wandering = told([58, 60, 58, 57, 58, 60, 62, 60, 58, 60, 58, 57, 58, 60])!;
    expect(advice(wandering, deck)).toBe(
      'Few leaps this time: try the arpeggio of I, which this lesson asks.',
    );
  });

  it('is where on the neck the lesson goes beside', () => {
    const deck = lesson({ drills: [{ ...spot, frets: [1, 14] }] });
    const box = told([58, 62, 65, 62, 58, 65, 58, 62, 65, 62, 58, 65])!;
    expect(advice(box, deck)).toMatch(/^All of it lay in frets \d to \d: this lesson goes up to/);
  });

  it('is nothing where the lesson drills nothing that would help', () => {
    expect(advice(running, lesson({}))).toBeNull();
    expect(advice(told(LEAPING)!, lesson({ drills: [{ ...spot, frets: [1, 8] }] }))).toBeNull();
  });

  it('is a figure to keep even, for whoever leaps and is uneven', () => {
    const pulse = { kind: 'pulse', figures: ['triplets'], tempos: [60, 72], clicks: ['beat'] };
    const uneven = LEAPING.map((midi, i) => ({
      heard: midi,
      time: i / 2 + (i % 3) * 0.06,
      confidence: 1,
    }));
    const line = toldOf({ heard: uneven, isMeasured: true, tempo, key, instrument: GUITAR })!;
    expect(advice(line, lesson({ drills: [pulse] }))).toMatch(
      /^Your notes lay \d\d ms around the beat: keep triplets even at 60 once more\.$/,
    );
  });
});

describe('the bounds of what is said of it', () => {
  const figures = (change: object): MinuteTold =>
    ({
      line: { notes: 40, steps: 10, leaps: 20, repeats: 9, leaping: 0.5, run: null, pauses: [] },
      outlined: [],
      along: null,
      even: { spread: 0 },
      ...change,
    }) as unknown as MinuteTold;
  const running = (steps: number, direction = 'down') =>
    figures({ line: { steps, leaps: 20, repeats: 0, leaping: 0.9, run: { steps, direction } } });

  // A run of six steps and more; its length in words up to twelve.
  it.each([
    [5, null],
    [6, 'six'],
    [7, 'seven'],
    [8, 'eight'],
    [9, 'nine'],
    [10, 'ten'],
    [11, 'eleven'],
    [12, 'twelve'],
    [13, '13'],
  ])('a run of %i steps', (steps, word) => {
    const said = word && `You ran ${word} steps down: try the sixths in the phrase.`;
    expect(advice(running(steps), lesson(sixths))).toBe(said);
  });

  // The leap that comes most often, thirds only where there is no other.
  it.each([
    ['Bb3 D4 F4 D4', 'thirds'],
    ['Bb3 D4 F4 D4 G4', 'fourths'],
    ['Bb3 F4 Bb3 D4', 'fifths'],
    ['Bb3 G4 Bb3 D4', 'sixths'],
    ['Bb3 A4 Bb3 D4', 'sevenths'],
    ['Bb3 Bb4 Bb3 D4', 'octaves'],
    ['Bb4 F4 Bb4 G4 D4 G4 D4 G4', 'fourths'],
  ])('%s leaps by %s', (notes, leap) => {
    const phrases = [{ tempo: 60, notes: notes.split(' ') }];
    expect(advice(running(6), lesson({ phrases }))).toBe(
      `You ran six steps down: try the ${leap} in the phrase.`,
    );
    expect(advice(running(6), lesson({ phrases: [...phrases, ...sixths.phrases] }))).toBe(
      `You ran six steps down: try the ${leap} in the first phrase.`,
    );
  });

  it('few leaps are less than three in ten of twelve moves and more, and the first arpeggio asked that was left out', () => {
    const deck = lesson({ drills: [{ ...spot, frets: [1, 8] }] });
    const wandering = (leaping: number, moves: number, degrees: readonly number[] = []) =>
      figures({
        line: { steps: moves - 3, leaps: 2, repeats: 1, leaping, run: null },
        outlined: degrees.map((degree) => ({ chord: { degree }, times: 1 })),
      });
    const few = (numeral: string) =>
      `Few leaps this time: try the arpeggio of ${numeral}, which this lesson asks.`;
    expect(advice(wandering(0.29, 12), deck)).toBe(few('I'));
    expect(advice(wandering(0.3, 12), deck)).toBeNull();
    expect(advice(wandering(0.29, 11), deck)).toBeNull();
    expect(advice(wandering(0.1, 30, [1]), deck)).toBe(few('IV'));
    expect(advice(wandering(0.1, 30, [5, 4, 1]), deck)).toBeNull();
  });

  it('a box is less than four frets wide, in a lesson that goes up four frets and more above it', () => {
    const box = (low: number, high: number, highest: number) =>
      advice(
        figures({ along: { reach: 100, frets: [low, high] } }),
        lesson({ drills: [{ ...spot, frets: [1, highest] }] }),
      );
    expect(box(3, 6, 10)).toBe(
      'All of it lay in frets 3 to 6: this lesson goes up to fret 10, so try the same there.',
    );
    expect(box(3, 7, 12)).toBeNull();
    expect(box(3, 6, 9)).toBeNull();
  });

  it('uneven is 35 ms around the beat and more, in a lesson that drills time', () => {
    const pulse = { kind: 'pulse', tempos: [66, 72], clicks: ['beat'] };
    const said = (spread: number, figures_: readonly string[]) =>
      advice(
        figures({ even: { spread } }),
        lesson({ version: 3, drills: [{ ...pulse, figures: figures_ }], ...sixths }),
      );
    expect(said(0.0349, ['eighths'])).toBeNull();
    expect(said(0.035, ['eighths'])).toBe(
      'Your notes lay 35 ms around the beat: keep eighths even at 66 once more.',
    );
    expect(said(0.0512, ['phrase'])).toBe(
      'Your notes lay 51 ms around the beat: keep the phrase’s rhythm even at 66 once more.',
    );
  });

  it('what is sure by itself is .8 sure, what is sure between two such .5', () => {
    const sure = (...all: readonly number[]) =>
      all.map((_, i) =>
        isSure(
          all.map((confidence) => ({ confidence })),
          i,
        ),
      );
    expect(sure(0.8, 0.79, 0.8)).toEqual([true, true, true]);
    expect(sure(0.79, 0.79)).toEqual([false, false]);
    expect(sure(0.9, 0.5, 0.9)).toEqual([true, true, true]);
    expect(sure(0.9, 0.49, 0.9)).toEqual([true, false, true]);
    expect(sure(0.5, 0.9)).toEqual([true, true]);
  });
});
