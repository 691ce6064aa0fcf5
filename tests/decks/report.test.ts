import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromBase64url } from '../../src/decks/bytes.ts';
import { toBase64url } from '../../src/decks/seal.ts';
import { sealLink } from '../../src/decks/seal.ts';
import { PLAIN_TEXT } from '../../src/decks/plain.ts';
import { deckMark, readReport, reportLink } from '../../src/decks/report.ts';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import { DRILLED_FIGURES } from '../../src/decks/drills/time.ts';
import type { FigureFacts, MinuteFacts } from '../../src/decks/reportTime.ts';
import { seeded } from '../../src/theory/random.ts';

const BASE = 'https://music-room.example.org/evening-class/';

const facts: fc.Arbitrary<ItemFacts> = fc
  .record({
    recall: fc.double({ min: 0, max: 1, noNaN: true }),
    ease: fc.double({ min: -1.2, max: 1.2, noNaN: true }),
    answers: fc.integer({ min: 1, max: 40 }),
    slow: fc.boolean(),
    misses: fc.integer({ min: 0, max: 3 }),
    takenFor: fc.option(fc.integer({ min: 1, max: 7 })),
  })
  .map((item) => (item.misses === 0 ? { ...item, takenFor: null } : { ...item, slow: false }));

const line = (most: number) =>
  fc
    .string({ unit: 'grapheme', maxLength: most })
    .map((text) => text.slice(0, most))
    .filter((text) => PLAIN_TEXT.test(text));

const uint32 = fc.integer({ min: 0, max: 2 ** 32 - 1 });

const figures: fc.Arbitrary<FigureFacts[]> = fc.uniqueArray(
  fc.record({
    figure: fc.constantFrom(...DRILLED_FIGURES),
    tempo: fc.option(fc.integer({ min: 30, max: 240 })),
    spread: fc.option(fc.integer({ min: 0, max: 30 }).map((n) => n / 100)),
    drift: fc.option(fc.constantFrom(-0.03, -0.02, -0.01, 0.01, 0.02, 0.03)),
    limps: fc.option(
      fc.record({
        place: fc.integer({ min: 2, max: 4 }),
        late: fc.constantFrom(-3, -1, 1, 4, 15).map((n) => n * 0.005),
      }),
    ),
  }),
  { maxLength: 3, selector: ({ figure }) => figure },
);
const minutes: fc.Arbitrary<MinuteFacts> = fc.record({
  count: fc.integer({ min: 1, max: 31 }),
  leaping: fc.integer({ min: 0, max: 31 }).map((n) => n / 31),
  run: fc.integer({ min: 0, max: 31 }),
  outlined: fc.integer({ min: 0, max: 7 }),
  reach: fc.integer({ min: 0, max: 63 }).map((n) => 10 * n),
  spread: fc.integer({ min: 0, max: 63 }).map((n) => n / 500),
});

const reports: fc.Arbitrary<Report> = fc
  .record({
    deck: uint32,
    sender: uint32,
    day: fc.integer({ min: 0, max: 65_535 }),
    minute: fc.integer({ min: 0, max: 1439 }),
    practised: fc.array(fc.boolean(), { minLength: 28, maxLength: 28 }),
    asked: fc.integer({ min: 100, max: 131_071 }),
    firstAsked: fc.integer({ min: 50, max: 100 }),
    firstRight: fc.integer({ min: 0, max: 50 }),
    seconds: fc.record(
      {
        spot: fc.double({ min: 0.5, max: 60, noNaN: true }),
        place: fc.double({ min: 0.5, max: 60, noNaN: true }),
        trace: fc.double({ min: 0.5, max: 60, noNaN: true }),
        outline: fc.double({ min: 0.5, max: 60, noNaN: true }),
        fill: fc.double({ min: 0.5, max: 60, noNaN: true }),
      },
      { requiredKeys: [] },
    ),
    time: fc.record({ figures, minutes: fc.option(minutes) }),
    items: fc.array(fc.option(facts), { minLength: 1, maxLength: 60 }),
    marks: fc.array(fc.boolean(), { maxLength: 15 }),
    question: line(60),
    // Blanks alone are no name, and are refused.
    name: line(40).map((name) => name.trim()),
  })
  .map(({ marks, ...report }) => ({
    ...report,
    seconds: { ...report.seconds },
    askedAbout: report.items.flatMap((_, i) => (marks[i] ? [i] : [])),
  }));

/** As much of time as a report tells. */
const FULL: Report['time'] = {
  figures: (['quarters', 'triplets', 'phrase'] as const).map((figure) => ({
    figure,
    tempo: 84,
    spread: 0.12,
    drift: 0.02,
    limps: { place: 2, late: -0.02 },
  })),
  minutes: { count: 12, leaping: 10 / 31, run: 7, outlined: 4, reach: 180, spread: 0.024 },
};

function read(link: string): Report {
  const opened = readReport(link);
  if ('fault' in opened) throw new Error(opened.fault);
  return opened.report;
}

const linkLength = (report: Report) => reportLink(report, BASE).length;

/** The items seen, as read and as told. */
const pairs = (back: Report, report: Report) =>
  report.items.flatMap((item, i): [ItemFacts, ItemFacts][] => {
    const kept = back.items[i];
    return item && kept ? [[kept, item]] : [];
  });

const utf8 = (text: string) => new TextEncoder().encode(text);

const faultOf = (link: string) => {
  const opened = readReport(link);
  return 'fault' in opened ? opened.fault : null;
};

/** A student in the fifth week on a lesson of 150 items: a share missed lately. */
function student(seed: number, share = 0.4): Report {
  const random = seeded(seed);
  const items = Array.from({ length: 150 }, (): ItemFacts => {
    const missed = random.next() < share;
    return {
      recall: random.next(),
      ease: random.next() + random.next() - 1,
      answers: 1 + random.below(9),
      slow: !missed && random.next() < 0.2,
      misses: missed ? 1 + random.below(3) : 0,
      takenFor: missed ? 1 + random.below(7) : null,
    };
  });
  return {
    deck: deckMark('0123456789abcdef'),
    sender: 3_141_592_653,
    day: 20_788,
    minute: 1180,
    practised: Array.from({ length: 28 }, () => random.next() < 0.6),
    asked: 3099,
    firstAsked: 2900,
    firstRight: 2480,
    seconds: { spot: 3.2, place: 7.9, trace: 5.5 },
    items,
    time: FULL,
    askedAbout: [],
    question: '',
    name: '',
  };
}

describe('the link of a report', () => {
  it('reads back to what was told, each number within the rounding that is promised', () => {
    fc.assert(
      fc.property(reports, (report) => {
        const back = read(reportLink(report, BASE));
        const { items: _items, seconds: _seconds, ...exact } = report;
        expect(back).toMatchObject(exact);
        expect(back.items.map((item) => item === null)).toEqual(
          report.items.map((item) => item === null),
        );
        for (const [kept, item] of pairs(back, report)) {
          const { recall, ease, answers, ...rest } = item;
          expect(kept).toMatchObject(rest);
          expect(Math.abs(kept.recall - recall)).toBeLessThan(0.017);
          const within = Math.max(-1.05, Math.min(1.05, ease!));
          expect(Math.abs(kept.ease! - within)).toBeLessThan(0.151);
          expect([answers, 8]).toContainEqual(
            answers >= 8
              ? 8
              : expect.toSatisfy((n: number) => kept.answers <= n && n < 2 * kept.answers),
          );
        }
        expect(Object.keys(back.seconds).toSorted()).toEqual(
          Object.keys(report.seconds).toSorted(),
        );
        for (const kind of ['spot', 'place', 'trace'] as const) {
          const told = report.seconds[kind] ?? 1;
          expect(Math.abs((back.seconds[kind] ?? 1) / told - 1)).toBeLessThan(0.05);
        }
      }),
    );
  });

  it('rounds once: what was read is written as the same link', () => {
    fc.assert(
      fc.property(reports, (report) => {
        const link = reportLink(report, BASE);
        expect(reportLink(read(link), BASE)).toBe(link);
      }),
    );
  });

  it('takes at most 500 characters for 150 items, the address counted in, however many were missed', () => {
    for (const share of [0, 0.2, 0.4, 0.6, 0.8, 1]) {
      const lengths = Array.from({ length: 10 }, (_, seed) => linkLength(student(seed, share)));
      expect(Math.max(...lengths)).toBeLessThanOrEqual(500);
    }
  });

  it('has room in them for a question, a name and five items asked about, numbers told less finely', () => {
    const question = 'Which finger goes where in the seventh chords on 4 to 1, Jo?';
    expect(question).toHaveLength(60);
    const name = 'Mareike from the quay, Thursdays at seven';
    const asking = { question, name: name.slice(0, 40), askedAbout: [3, 17, 58, 101, 149] };
    for (const share of [0.1, 0.4, 1]) {
      for (let seed = 0; seed < 10; seed++) {
        const report = { ...student(seed, share), ...asking };
        const link = reportLink(report, BASE);
        expect(link.length).toBeLessThanOrEqual(500);
        const back = read(link);
        expect(back).toMatchObject(asking);
        const both = pairs(back, report);
        for (const [kept, item] of both) {
          expect(kept).toMatchObject({ misses: item.misses, takenFor: item.takenFor });
          expect(Math.abs(kept.recall - item.recall)).toBeLessThan(0.073);
        }
        const moved = both.reduce((sum, [kept, item]) => sum + kept.recall - item.recall, 0);
        expect(Math.abs(moved / both.length)).toBeLessThan(0.015);
      }
    }
  });

  it('is read also where it was made before there were phrases to drill', () => {
    const old =
      'AQA-V2h5IGlzIHZpaSBzbyB3ZWFrPwAAAAABAAAAAk4gSxJJJJIAZAAoNL94AMfZSWP8OvneYH90SP82ifI';
    expect(read(old)).toMatchObject({
      deck: 1,
      sender: 2,
      day: 20_000,
      asked: 100,
      firstAsked: 0,
      seconds: { spot: expect.closeTo(2, 1), trace: expect.closeTo(5, 0) },
      items: [{ slow: true, misses: 0, ease: null }, null, { misses: 2, takenFor: 4 }],
      askedAbout: [1],
      question: 'Why is vii so weak?',
    });
  });

  it('is read also where it was made before time was told', () => {
    const old =
      'AwBEV2h5IGlzIHZpaSBzbyB3ZWFrPx9NYXJlaWtlAAAAAAcAAAAJUNxLFVVVVAB4AB4ACi6QAygBggBChYD_gDBlQkU';
    expect(read(old)).toMatchObject({
      deck: 7,
      sender: 9,
      asked: 120,
      firstAsked: 60,
      firstRight: 40,
      items: [{ slow: true }, null, { misses: 2, takenFor: 4 }],
      time: { figures: [], minutes: null },
      name: 'Mareike',
    });
  });

  it('is read also where it was made before ease was told, with the recall of then a week ahead', () => {
    const old =
      'AgBMV2h5IGlzIHZpaSBzbyB3ZWFrPx9NYXJlaWtlAAAAAAcAAAAJUNxLEkkkkgB4AC1CX_____8oAg_R2ix4O6Y0q1WnI3WFQF0JPA';
    expect(read(old)).toMatchObject({
      deck: 7,
      sender: 9,
      asked: 120,
      seconds: { spot: expect.closeTo(2, 1), fill: expect.closeTo(9, 0) },
      // Stabilities of 3, .6 and 40 days, last answered 1, 2 and .2 days before.
      items: [
        { recall: expect.closeTo(0.84, 1), slow: true },
        null,
        { recall: expect.closeTo(0.69, 1), misses: 2, takenFor: 4 },
        { recall: expect.closeTo(0.98, 1), misses: 0, ease: null, answers: 0 },
      ],
      askedAbout: [2],
      question: 'Why is vii so weak?',
      name: 'Mareike',
    });
  });

  it('names nobody unless a name was typed', () => {
    const report = student(1);
    expect(read(reportLink(report, BASE)).name).toBe('');
    expect(read(reportLink({ ...report, name: 'Mareike' }, BASE)).name).toBe('Mareike');
  });

  it('carries script in a question through as text', () => {
    const question = '<img src=x onerror="alert(1)">';
    expect(read(reportLink({ ...student(1), question }, BASE)).question).toBe(question);
  });

  it('is not made of more than it can carry', () => {
    const report = student(1);
    expect(() => reportLink({ ...report, question: 'x'.repeat(61) }, BASE)).toThrow(
      'Shorten the question to 60 characters.',
    );
    expect(() => reportLink({ ...report, name: 'x'.repeat(41) }, BASE)).toThrow('Shorten the name');
    expect(() => reportLink({ ...report, askedAbout: [150] }, BASE)).toThrow(
      'Mark cards of this lesson only.',
    );
  });
});

describe('what no report can be', () => {
  const plain = fc.sample(reports, { numRuns: 1, seed: 4 })[0]!;
  const refused = (change: Partial<Report>) => () => reportLink({ ...plain, ...change }, BASE);
  const counts = { asked: 20, firstAsked: 10, firstRight: 5 };

  it('holds its counts within one another', () => {
    expect(refused({ ...counts, firstAsked: 20, firstRight: 20 })).not.toThrow();
    expect(refused({ ...counts, firstAsked: 21 })).toThrow('counts right answers among');
    expect(refused({ ...counts, firstRight: 11 })).toThrow('counts right answers among');
    expect(refused({ ...counts, asked: 131_071 })).not.toThrow();
    expect(refused({ ...counts, asked: 131_072 })).toThrow('counts right answers among');
  });

  it('covers 28 days to a minute', () => {
    const days = (count: number) => Array.from({ length: count }, () => true);
    expect(refused({ practised: days(28), minute: 1439 })).not.toThrow();
    expect(refused({ minute: 1440 })).toThrow('28 days to a minute');
    expect(refused({ practised: days(27) })).toThrow('28 days to a minute');
  });

  it('asks about fifteen cards of its own at most, in 60 letters, by a name of 40', () => {
    const many = Array.from({ length: 20 }, () => null);
    const asking = (count: number) => Array.from({ length: count }, (_, i) => i);
    expect(refused({ items: many, askedAbout: asking(15) })).not.toThrow();
    expect(refused({ items: many, askedAbout: asking(16) })).toThrow('at most 15 cards');
    expect(refused({ items: many, askedAbout: [20] })).toThrow('of this lesson only');
    expect(refused({ question: 'x'.repeat(60), name: 'x'.repeat(40) })).not.toThrow();
    expect(refused({ question: 'x'.repeat(61) })).toThrow('Shorten the question to 60');
    expect(refused({ name: 'x'.repeat(41) })).toThrow('Shorten the name to 40');
  });
});

describe('a damaged report', () => {
  const link = reportLink(
    { ...student(2), question: 'Why is vii so weak?', name: 'Mareike' },
    BASE,
  );
  const payload = link.slice(link.indexOf('/report/') + 8);

  it('is told to be cut short at every length', () => {
    for (let length = 0; length < payload.length; length++) {
      expect(faultOf(`#/report/${payload.slice(0, length)}`)).toContain('was cut short');
    }
  });

  it('is refused with any byte altered', () => {
    const bytes = fromBase64url(payload)!;
    for (let at = 0; at < bytes.length; at++) {
      const other = bytes.slice();
      other[at]! ^= 1 + (at % 255);
      expect(faultOf(`#/report/${toBase64url(other)}`)).toContain('This report link was');
    }
  });

  // Behind the text and a zero byte: deck 32, sender 32, day 16, minute 11, practised 28, then three counts of 17 bits.
  it.each([
    ['more first answers than answers', 119, 17, 0],
    ['more right ones than first answers', 136, 17, 0],
    ['a day of more than its minutes', 80, 11, 1440],
  ])('is refused where it tells of %s', (_, from, width, value) => {
    const body = fromBase64url(payload)!.slice(3, -4);
    const start = 8 * (body.indexOf(0) + 1) + from;
    const sealed = (number: number) => {
      const other = body.slice();
      for (let bit = 0; bit < width; bit++) {
        const at = start + bit;
        const mask = 0x80 >> (at % 8);
        const isOne = (number >> (width - 1 - bit)) & 1;
        other[at >> 3] = isOne ? other[at >> 3]! | mask : other[at >> 3]! & ~mask;
      }
      return faultOf(sealLink('report', BASE, 4, other));
    };
    expect(sealed(value)).toContain('This report link was altered');
    const { asked, firstAsked, minute } = student(2);
    const own = new Map([
      [119, asked],
      [136, firstAsked],
      [80, minute],
    ]);
    expect(sealed(own.get(from)!)).toBeNull();
  });

  it('is refused where it has more than a question and a name before its numbers', () => {
    const body = fromBase64url(payload)!.slice(3, -4);
    expect(faultOf(sealLink('report', BASE, 4, body))).toBeNull();
    const third = Uint8Array.of(...utf8('one\u001f'), ...body);
    expect(faultOf(sealLink('report', BASE, 4, third))).toContain('was altered');
    const behind = Uint8Array.of(...body, 0);
    expect(faultOf(sealLink('report', BASE, 4, behind))).toContain('was altered');
  });

  it('is refused when whole but made by someone else, and told when newer or a lesson', () => {
    expect(faultOf(sealLink('report', BASE, 1, utf8('no zero byte')))).toContain('was altered');
    expect(faultOf(sealLink('report', BASE, 1, utf8('too little\0abc')))).toContain('was altered');
    expect(faultOf(sealLink('report', BASE, 5, utf8('?')))).toContain('newer version');
    expect(faultOf(sealLink('lesson', BASE, 1, utf8('?')))).toBe(
      'This is a lesson, not a report. Open it under Lessons.',
    );
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (body) => {
        for (const version of [1, 2, 3, 4]) {
          const opened = readReport(sealLink('report', BASE, version, body));
          // Either it says so, or it is a report like any other, within every limit.
          const said = 'fault' in opened ? opened.fault : reportLink(opened.report, BASE);
          expect(said).toMatch(/was altered|#\/report\//);
        }
      }),
    );
  });
});
