import * as fc from 'fast-check';
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';

const report = (day: number, minute = 0, some: object = {}) => ({
  sender: 1,
  deck: 2,
  day,
  minute,
  link: `#/report/${day}-${minute}`,
  ...some,
});

async function device() {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  return import('../../src/store/reports.ts');
}

let reports: Awaited<ReturnType<typeof device>>;
beforeEach(async () => {
  reports = await device();
});

describe('reports on the teacher’s device', () => {
  it('keep the newest of one student and lesson, never an older one', async () => {
    expect(await reports.keepReport(report(5, 10))).toBe('new');
    expect(await reports.keepReport(report(5, 9))).toBe('older');
    expect(await reports.keepReport(report(4, 900))).toBe('older');
    expect(await reports.keepReport(report(5, 10))).toBe('same');
    expect(await reports.listReports()).toEqual([report(5, 10)]);
    expect(await reports.keepReport(report(5, 11))).toBe('replaced');
    expect(await reports.listReports()).toEqual([report(5, 11)]);
  });

  it('take a report of the same minute with a question added', async () => {
    await reports.keepReport(report(5, 10));
    const asking = report(5, 10, { link: '#/report/asking' });
    expect(await reports.keepReport(asking)).toBe('replaced');
    expect(await reports.listReports()).toEqual([asking]);
  });

  it('keep one for each student and lesson', async () => {
    await reports.keepReport(report(5));
    await reports.keepReport(report(4, 0, { sender: 3 }));
    await reports.keepReport(report(3, 0, { deck: 4 }));
    expect(await reports.listReports()).toHaveLength(3);
  });

  it('end with the same, in whatever order they come', async () => {
    const moments = fc.tuple(fc.nat({ max: 3 }), fc.nat({ max: 2 }), fc.nat({ max: 3 }));
    await fc.assert(
      fc.asyncProperty(fc.array(moments, { maxLength: 8 }), async (drawn) => {
        const all = drawn.map(([day, minute, sender]) => report(day, minute, { sender }));
        const left = await device();
        for (const one of all) await left.keepReport(one);
        const turned = await device();
        for (const one of all.toReversed()) await turned.keepReport(one);
        expect(await turned.listReports()).toEqual(await left.listReports());
      }),
      { numRuns: 30 },
    );
  });
});
