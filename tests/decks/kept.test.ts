/** Links that people have kept: they open as what they were made of, whatever is changed in how links are made. */
import { describe, expect, it } from 'vitest';
import { fnv64 } from '../../src/decks/bytes.ts';
import { deckId, readDeck, writeDeck } from '../../src/decks/document.ts';
import { KIND_NAMES } from '../../src/decks/kinds.ts';
import { readLink } from '../../src/decks/link.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { deckMark, readReport, reportLink, senderMark } from '../../src/decks/report.ts';
import { KEPT } from './kept.ts';

const LESSON =
  '#/lesson/BAEuLYzdboJAEEYfhZFLI8PO7A9IQkKN0d73CVBWJQWW7C42pqnP3tT0uzzn5Htv_cktHkJsex-Sj8F9DQ9MWLAhFpQcYewn55PvdGpHm1Zp590M-3STntvZpRVv0sFe4ns7dbZLq-gX-5MEQajVRklGPnskXcDMaLSSKD57iELi0sWABVtkcAwX8MRwh4HgIVAyIRVLNAIVPNbUlAosYUBjUIJdMyzEEo3YFIzEUAeBOlPIWYneuYhavAZ1FBgXP2HBaPvrLd4CCnq5pOBGw141VFMuK5lrOKhK5uUzDH1n4U1VnJdwVI2sKeeKcwO70x_cPm_tOFqfuem_es7LMGTucoG9rrmivIQVZfIOK32-Od-1A6zM3IbQT9dkaxwcX5-wO0nYKzioX2gcqj4';
const REPORT =
  '#/report/BABXV2h5IGlzIHZpaSBzbyB3ZWFrPx9NYXJlaWtlAAEjRWeJq83vUTSTkkkkkgwbBaoCbC6WRbDgSN2lIwADDLSzjABggAgBA_-B4ACzGcIKhADzl3bz';

describe('the link of a lesson that was kept', () => {
  it('opens as that lesson', async () => {
    const lesson = readDeck(KEPT);
    expect(lesson).toHaveProperty('deck');
    expect(await readLink(LESSON)).toEqual(lesson);
  });

  it('is that of the lesson still, under the same name', async () => {
    const lesson = readDeck(KEPT);
    if ('fault' in lesson) throw new Error(lesson.fault);
    expect(writeDeck(lesson.deck)).toEqual(KEPT);
    expect(await readLink(await deckLink(lesson.deck, ''))).toEqual(lesson);
    expect(deckId(lesson.deck)).toBe('0d10fa9c64fcefd4');
  });
});

describe('the link of a report that was kept', () => {
  const item = (recall: number, ease: number, answers: number) => ({
    recall: expect.closeTo(recall, 4) as number,
    ease: expect.closeTo(ease, 4) as number,
    answers,
    slow: false,
    misses: 0,
    takenFor: null,
  });
  const TOLD = {
    deck: 0x0123_4567,
    sender: 0x89ab_cdef,
    day: 20_788,
    minute: 1180,
    practised: Array.from({ length: 28 }, (_, day) => day % 3 === 0),
    asked: 3099,
    firstAsked: 2900,
    firstRight: 2480,
    seconds: {
      spot: expect.closeTo(2, 1) as number,
      place: expect.closeTo(8, 0) as number,
      outline: expect.closeTo(4, 1) as number,
      play: expect.closeTo(20.35, 1) as number,
    },
    time: {
      figures: [
        {
          figure: 'triplets',
          tempo: 84,
          spread: 0.12,
          drift: -0.02,
          limps: { place: 2, late: -0.02 },
        },
        { figure: 'phrase', tempo: null, spread: null, drift: null, limps: null },
      ],
      minutes: { count: 6, leaping: 11 / 31, run: 9, outlined: 3, reach: 140, spread: 0.024 },
    },
    // Recall in 31sts, ease in 7ths of ±1.05, answers in doublings.
    items: [
      item(1, 1.05, 8),
      null,
      { ...item(0, -1.05, 1), misses: 2, takenFor: 4 },
      { ...item(25 / 31, 0.15, 2), slow: true },
      { ...item(16 / 31, 0.15, 1), misses: 3 },
      { ...item(16 / 31, 0.15, 1), misses: 1, takenFor: 7 },
    ],
    askedAbout: [2, 4],
    question: 'Why is vii so weak?',
    name: 'Mareike',
  };

  it('opens as that report', () => {
    const read = readReport(REPORT);
    if ('fault' in read) throw new Error(read.fault);
    expect(read.report).toEqual(TOLD);
    const again = reportLink(read.report, '');
    expect(readReport(again)).toMatchObject({ report: TOLD });
    // A report tells how many kinds there are: with a twelfth its letters are others.
    if (KIND_NAMES.length === 11) expect(again).toBe(REPORT);
  });
});

// FNV-1a of 64 bits: the published values of nothing, of "a" and of "foobar" (Fowler, Noll, Vo, Eastlake).
it('marks and names rest on a published sum', () => {
  const sum = (text: string) => fnv64(new TextEncoder().encode(text)).toString(16);
  expect([sum(''), sum('a'), sum('foobar')]).toEqual([
    'cbf29ce484222325',
    'af63dc4c8601ec8c',
    '85944171f73967e8',
  ]);
  expect(senderMark('')).toBe((0xcbf2_9ce4 ^ 0x8422_2325) >>> 0);
  expect(deckMark('a')).toBe((0xaf63_dc4c ^ 0x8601_ec8c) >>> 0);
});
