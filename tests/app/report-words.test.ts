import { describe, expect, it } from 'vitest';
import {
  confusionWords,
  reportDay,
  studentName,
  takenWords,
} from '../../src/app/report/reportWords.ts';
import { figureFactsWords, needsInTime } from '../../src/app/report/timeWords.ts';
import { counted, percent } from '../../src/app/figures.ts';
import { timesWords } from '../../src/app/measured.ts';
import { parseKey } from '../../src/theory/key.ts';

describe('what a teacher reads of a report', () => {
  // What was asked stands first, what it was taken for behind.
  it.each([
    ['Bb major', 'spot', 'triad', 2, 4, 'ii seen as IV'],
    ['Bb major', 'spot', 'seventh', 7, 2, 'viiø7 seen as ii7'],
    ['A harmonic minor', 'trace', 'seventh', 7, 2, 'vii°7 heard as iiø7'],
    ['G minor pentatonic', 'spot', 'triad', 2, 4, 'ii° seen as iv'],
  ] as const)('in %s of a %s of a %s: %i for %i', (key, kind, size, degree, takenFor, words) => {
    const pair = { kind, size, degree, takenFor, times: 6 };
    expect(takenWords(pair, parseKey(key)!)).toBe(words);
    expect(confusionWords(pair, parseKey(key)!)).toBe(`${words}, 6 times`);
    expect(confusionWords({ ...pair, times: 1 }, parseKey(key)!)).toBe(`${words}, once`);
  });

  // A report's day begins at 04:00: minute 0 of it is four in the morning, minute 1200 the midnight after.
  it.each([
    [0, '3 December at 04:00'],
    [480, '3 December at 12:00'],
    [1199, '3 December at 23:59'],
    [1200, '4 December at 00:00'],
    [1439, '4 December at 03:59'],
  ])('made at minute %i of its day is of %s, on whatever phone', (minute, words) => {
    const day = Date.UTC(2026, 11, 3) / 86_400_000;
    const before = process.env.TZ;
    for (const zone of ['UTC', 'Pacific/Kiritimati', 'Pacific/Pago_Pago']) {
      process.env.TZ = zone;
      expect(reportDay({ day, minute }, true).replace(',', ' at').replace(' at at', ' at')).toBe(
        words,
      );
      expect(reportDay({ day, minute })).toBe(words.replace(/ at.*/, ''));
    }
    process.env.TZ = before ?? 'UTC';
  });

  it('has the name that was typed, or four letters', () => {
    expect(studentName('Ada', 7)).toBe('Ada');
    expect(studentName(' \u200b', 0x12ab_cdef)).toBe('Student 12ab');
    expect(studentName('', 0xff)).toBe('Student 0000');
  });

  it.each([
    [{ drift: -0.02, limps: null }, 'rushes', ['rushes eighths']],
    [{ drift: 0.02, limps: null }, 'drags', []],
    [
      { drift: null, limps: { place: 2, late: 0.025 } },
      'the second note 25 ms late',
      ['second note of eighths limps'],
    ],
    [
      { drift: null, limps: { place: 4, late: -0.025 } },
      'the fourth note 25 ms early',
      ['fourth note of eighths limps'],
    ],
  ] as const)('%o in time %s', (told, words, needs) => {
    const facts = { figure: 'eighths', tempo: 60, spread: 0.08, ...told } as const;
    expect(figureFactsWords(facts)).toBe(
      `Eighths: even up to ♩ = 60; 8 % of a step last time, ${words}.`,
    );
    expect(needsInTime({ time: { figures: [facts], minutes: null } })).toEqual(needs);
  });

  it('counts in plain words', () => {
    expect([percent(0.005), percent(0.994), percent(1)]).toEqual(['1 %', '99 %', '100 %']);
    expect([counted(0, 'drill'), counted(1, 'drill')]).toEqual(['0 drills', '1 drill']);
    expect([1, 2, 3].map(timesWords)).toEqual(['once', 'twice', '3 times']);
  });
});
