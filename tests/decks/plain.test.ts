import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDeck } from '../../src/decks/document.ts';
import { isBlank, isolated, PLAIN_TEXT } from '../../src/decks/plain.ts';
import { readReport, reportLink, type Report } from '../../src/decks/report.ts';

/** Marks, embeddings, overrides and isolates of the bidirectional algorithm; what has no width; ends of lines. */
const HIDDEN = [
  '\u202a\u202b\u202c\u202d\u202e',
  '\u2066\u2067\u2068\u2069',
  '\u200e\u200f\u061c',
  '\u200b\u2060\ufeff\u180e',
  '\u2028\u2029\u0000\u0085',
].flatMap((letters) => [...letters]);

const document = { version: 1, title: 'Tuesday', note: 'Slowly.', key: 'C major', drills: [] };

const report: Report = {
  deck: 1,
  sender: 2,
  day: 20_700,
  minute: 600,
  practised: Array.from({ length: 28 }, () => false),
  asked: 0,
  firstAsked: 0,
  firstRight: 0,
  seconds: {},
  items: [],
  time: { figures: [], minutes: null },
  askedAbout: [],
  question: '',
  name: '',
};

describe('letters that cannot be seen, or that turn a line around', () => {
  it.each(HIDDEN)('are refused in a title, a note and an instrument’s name: %j', (letter) => {
    for (const changed of [
      { title: `evil${letter}live` },
      { note: `a${letter}b` },
      { instrument: { name: `a${letter}`, tuning: ['C4', 'D4', 'E4', 'F4'] } },
    ]) {
      const read = readDeck({ ...document, ...changed });
      expect('fault' in read && read.fault).toMatch(/letters that cannot be seen or that turn/);
    }
  });

  it.each(HIDDEN)('are refused in a report’s question and name: %j', (letter) => {
    for (const words of [{ name: `A${letter}nna` }, { question: `w${letter}hy?` }]) {
      expect(() => reportLink({ ...report, ...words }, '')).toThrow(/letters that cannot be seen/);
    }
  });

  it('leave every script its letters', () => {
    for (const title of [
      'Übung für Ø',
      'درس سه\u200cشنبه',
      'שיעור ראשון',
      '火曜日の練習',
      '👨‍👩‍👧 trio',
    ]) {
      expect(readDeck({ ...document, title })).toMatchObject({ deck: { title } });
      const read = readReport(reportLink({ ...report, name: title.slice(0, 40) }, ''));
      expect(read).toMatchObject({ report: { name: title.slice(0, 40) } });
    }
  });
});

describe('a text that nothing is to be seen of', () => {
  it('is blank: spaces, joiners, fillers', () => {
    for (const text of ['', ' ', '\u00a0\u3000', '\u200d', '\u3164', '\u2800', '\u115f \ufe0f']) {
      expect(isBlank(text), JSON.stringify(text)).toBe(true);
    }
  });

  it('is none that has a letter, a digit or a sign', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('a', '7', '–', 'ه', '♭'), (some, sign) => {
        expect(isBlank(some + sign)).toBe(false);
      }),
    );
    expect(PLAIN_TEXT.test('B♭ – dur')).toBe(true);
  });
});

describe('a text in a line that markup cannot set it apart from', () => {
  it('is set apart where it runs from right to left, and said to be none where nothing is seen of it', () => {
    expect(isolated('שיעור ראשון')).toBe('\u2068שיעור ראשון\u2069');
    expect(isolated('Lektion درس')).toBe('\u2068Lektion درس\u2069');
    expect(isolated('Übung – 火曜日 ♭')).toBe('Übung – 火曜日 ♭');
    expect(isolated('\u3164 ')).toBe('no name');
  });
});
