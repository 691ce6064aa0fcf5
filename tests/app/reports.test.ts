/** What becomes of a report that is opened: kept, in the place of which others, or beside them. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { reportLink, type ItemFacts, type Report } from '../../src/decks/report.ts';
import { NO_TIME } from '../../src/decks/reportTime.ts';
import { DAY } from '../../src/memory/day.ts';

type Reports = typeof import('../../src/app/report/reports.ts');
let reports: Reports;

beforeEach(async () => {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
  reports = await import('../../src/app/report/reports.ts');
});

it('a report dated more than a day ahead is refused: it would shut out those that follow', () => {
  const today = 20_700;
  // Late in the day: in the east the next one has begun.
  const now = today * DAY + 0.9 * DAY;
  const on = (day: number) => reports.reportFault({ day, deck: 1 } as Report, now);
  expect(on(today)).toBeNull();
  expect(on(today + 1)).toBeNull();
  expect(on(today + 2)).toMatch(/dated in the future/);
});

const KNOWN: ItemFacts = {
  recall: 1,
  ease: 0,
  answers: 1,
  slow: false,
  misses: 0,
  takenFor: null,
};

/** Of a phone on which so many cards had been answered by a day. */
function report(day: number, asked: number, some: Partial<Report> = {}): Report {
  return {
    deck: 1,
    sender: 2,
    day,
    minute: 600,
    practised: Array.from({ length: 28 }, () => true),
    asked,
    firstAsked: 4,
    firstRight: 2,
    seconds: {},
    time: NO_TIME,
    items: [KNOWN, null],
    askedAbout: [],
    question: '',
    name: '',
    ...some,
  };
}
const linkOf = (one: Report) => {
  const link = reportLink(one, '');
  return link.slice(link.indexOf('#'));
};
const arrive = (one: Report) => reports.arrive(one, linkOf(one));
const keptNow = async () => {
  const { listReports } = await import('../../src/store/reports.ts');
  const days = (all: readonly { day: number }[]) => all.map(({ day }) => day).toSorted();
  const listed = await listReports();
  expect(days(reports.reports.value!)).toEqual(days(listed));
  return days(listed);
};

describe('a report that is opened', () => {
  it('is kept, and the same one once more adds nothing', async () => {
    await reports.openReports();
    expect(reports.reports.value).toEqual([]);
    expect(await arrive(report(100, 10))).toEqual({ is: 'kept' });
    expect(await arrive(report(100, 10))).toEqual({ is: 'same' });
    expect(await keptNow()).toEqual([100]);
  });

  it('and goes on from one that is kept is first asked about, then takes its place or lies beside it', async () => {
    await arrive(report(100, 10));
    const later = report(103, 14, { items: [KNOWN, KNOWN] });
    expect(await arrive(later)).toMatchObject({ is: 'newer', than: { day: 100, asked: 10 } });
    expect(await keptNow()).toEqual([100]);
    expect(await reports.keepAs('beside', later, linkOf(later))).toEqual({ is: 'kept' });
    expect(await keptNow()).toEqual([100, 103]);
    const last = report(105, 20, { items: [KNOWN, KNOWN] });
    expect(await arrive(last)).toMatchObject({ is: 'newer', than: { day: 103, asked: 14 } });
    expect(await reports.keepAs('instead', last, linkOf(last))).toEqual({ is: 'kept' });
    expect(await keptNow()).toEqual([105]);
  });

  it('from which a kept one goes on is not kept', async () => {
    await arrive(report(103, 14));
    expect(await arrive(report(100, 10))).toMatchObject({ is: 'older', than: { day: 103 } });
    expect(await keptNow()).toEqual([103]);
  });

  // More answers by an earlier day: the log of no one phone has both.
  it('and disagrees with a kept one lies beside it, older or newer', async () => {
    await arrive(report(103, 14));
    expect(await arrive(report(100, 50))).toMatchObject({ is: 'beside', other: { day: 103 } });
    expect(await keptNow()).toEqual([100, 103]);
    expect(await arrive(report(104, 5))).toMatchObject({ is: 'beside' });
    expect(await keptNow()).toEqual([100, 103, 104]);
    const last = report(105, 20);
    expect(await arrive(last)).toMatchObject({ is: 'newer', than: { day: 104 } });
    await reports.keepAs('instead', last, linkOf(last));
    // It goes on from two of the three.
    expect(await keptNow()).toEqual([100, 105]);
  });

  it('of another phone, or on another lesson, has nothing to do with it', async () => {
    await arrive(report(100, 10));
    expect(await arrive(report(103, 14, { sender: 3 }))).toEqual({ is: 'kept' });
    expect(await arrive(report(104, 14, { deck: 9 }))).toEqual({ is: 'kept' });
    expect(await keptNow()).toEqual([100, 103, 104]);
    await reports.remove({ sender: 3 });
    expect(await keptNow()).toEqual([100, 104]);
  });
});

describe('a name', () => {
  it('is another student’s too where a report of another phone on the lesson bears it', async () => {
    const named = (name: string, some: Partial<Report> = {}) => report(100, 10, { name, ...some });
    await arrive(named('Mareike'));
    const isShared = (name: string, some: Partial<Report>) =>
      reports.hasNamesake(named(name, some));
    expect(isShared('Mareike', { sender: 3 })).toBe(true);
    expect(isShared(' mareike ', { sender: 3 })).toBe(true);
    expect(isShared('Mareike', { sender: 2 })).toBe(false);
    expect(isShared('Mareike', { sender: 3, deck: 9 })).toBe(false);
    expect(isShared('Tomke', { sender: 3 })).toBe(false);
    await arrive(named('', { sender: 4 }));
    expect(isShared('', { sender: 3 })).toBe(false);
  });
});
