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

describe('reports of a backup', () => {
  const drawn = fc
    .tuple(fc.nat({ max: 2 }), fc.nat({ max: 2 }), fc.nat({ max: 3 }), fc.nat({ max: 1 }))
    .map(([day, minute, sender, way]) => report(day, minute, { sender, link: `#/report/${way}` }));
  const some = fc.array(drawn, { maxLength: 8 });
  const moment = ({ sender, deck, day, minute }: ReturnType<typeof report>) =>
    [sender, deck, day, minute].join();

  it('are taken where they are newer, and reading them twice changes nothing', async () => {
    await fc.assert(
      fc.asyncProperty(some, some, async (here, file) => {
        const { keepReport, listReports, takeReports } = await device();
        for (const one of here) await keepReport(one);
        const before = await listReports();
        const taken = await takeReports(file);
        const after = await listReports();
        expect(await takeReports(file)).toBe(0);
        expect(await listReports()).toEqual(after);
        // Of each student the newest of both, and what was here where the file has nothing newer.
        for (const one of after) {
          const all = [...before, ...file].filter(({ sender }) => sender === one.sender);
          const newest = Math.max(...all.map(({ day, minute }) => day * 1440 + minute));
          expect(one.day * 1440 + one.minute).toBe(newest);
        }
        const kept = before.filter((one) => after.some((other) => moment(other) === moment(one)));
        for (const one of kept) expect(after).toContainEqual(one);
        if (taken === 0) expect(after).toEqual(before);
      }),
      { numRuns: 30 },
    );
  });
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

describe('reports that a teacher no longer needs', () => {
  const moments = async () =>
    (await reports.listReports()).map(({ sender, deck }) => [sender, deck]);
  beforeEach(async () => {
    for (const sender of [1, 2]) {
      for (const deck of [3, 4]) await reports.keepReport(report(5, 0, { sender, deck }));
    }
  });

  it('are removed one, a student’s, or a lesson’s', async () => {
    await reports.removeReports({ sender: 1, deck: 3 });
    expect(await moments()).toEqual([
      [1, 4],
      [2, 3],
      [2, 4],
    ]);
    await reports.removeReports({ deck: 4 });
    expect(await moments()).toEqual([[2, 3]]);
    await reports.removeReports({ sender: 2 });
    expect(await moments()).toEqual([]);
  });
});

describe('as many reports as a device keeps', () => {
  it('let a newer one take its place, and no other in', async () => {
    const many = Array.from({ length: reports.MOST_REPORTS + 1 }, (_, sender) =>
      report(5, 0, { sender }),
    );
    expect(await reports.takeReports(many)).toBe(reports.MOST_REPORTS);
    expect(await reports.keepReport(report(6, 0, { sender: 1_000_000 }))).toBe('full');
    expect(await reports.keepReport(report(6, 0, { sender: 0 }))).toBe('replaced');
    await reports.removeReports({ sender: 7 });
    expect(await reports.keepReport(report(6, 0, { sender: 1_000_000 }))).toBe('new');
  });
});
