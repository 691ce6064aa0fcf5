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

/** In these tests a report's link ends with how far its log is; those of another letter are of another log. */
const logged = (letter: string, far: number, some: object = {}) =>
  report(far, 0, { link: `#/report/${letter}${far}`, ...some });

const goesOn = (a: { link: string }, b: { link: string }) => a.link[9] === b.link[9];

describe('reports of a backup', () => {
  const drawn = fc
    .tuple(fc.constantFrom('a', 'b'), fc.nat({ max: 3 }), fc.nat({ max: 2 }))
    .map(([letter, far, sender]) => logged(letter, far, { sender }));
  const some = fc.array(drawn, { maxLength: 8 });

  it('are in the end the last of each log, in whatever order they come, and reading them twice changes nothing', async () => {
    await fc.assert(
      fc.asyncProperty(some, some, async (here, file) => {
        const { listReports, takeReports } = await device();
        await takeReports(here, goesOn);
        await takeReports(file, goesOn);
        const after = await listReports();
        expect(await takeReports([...file, ...here], goesOn)).toBe(0);
        expect(await listReports()).toEqual(after);
        const last = new Map<string, number>();
        for (const { sender, link, day } of [...here, ...file]) {
          const log = `${sender} ${link[9]}`;
          last.set(log, Math.max(day, last.get(log) ?? 0));
        }
        const logs = after.map(({ sender, link, day }) => [`${sender} ${link[9]}`, day] as const);
        expect(logs.toSorted()).toEqual([...last].toSorted());
      }),
      { numRuns: 30 },
    );
  });
});

describe('reports on the teacher’s device', () => {
  it('are kept side by side, unless one is to take the place of others', async () => {
    expect(await reports.keepReport(report(5, 10))).toBe('kept');
    expect(await reports.keepReport(report(5, 10))).toBe('same');
    expect(await reports.keepReport(report(4))).toBe('kept');
    expect(await reports.keepReport(report(3))).toBe('kept');
    expect(await reports.listReports()).toHaveLength(3);
    expect(await reports.keepReport(report(6), [report(4), report(3)])).toBe('kept');
    const days = async () => (await reports.listReports()).map(({ day }) => day).toSorted();
    expect(await days()).toEqual([5, 6]);
    await reports.removeReports({ link: report(5, 10).link });
    expect(await days()).toEqual([6]);
  });

  it('take the place of none of another student or lesson', async () => {
    const other = report(4, 0, { sender: 3 });
    await reports.keepReport(other);
    await reports.keepReport(report(5), [other]);
    expect(await reports.listReports()).toHaveLength(2);
    expect(await reports.listReports({ sender: 3, deck: 2 })).toEqual([other]);
  });

  it('are found where an earlier version kept them', async () => {
    const { store } = await import('../../src/store/device.ts');
    await store('readwrite', (all) => all.put(report(5), ['report', 1, 2]));
    expect(await reports.listReports({ sender: 1, deck: 2 })).toEqual([report(5)]);
    expect(await reports.keepReport(report(6), [report(5)])).toBe('kept');
    expect(await reports.listReports()).toEqual([report(6)]);
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
    const never = () => false;
    const many = Array.from({ length: reports.MOST_REPORTS + 1 }, (_, sender) =>
      report(5, 0, { sender }),
    );
    expect(await reports.takeReports(many, never)).toBe(reports.MOST_REPORTS);
    expect(await reports.keepReport(report(6, 0, { sender: 1_000_000 }))).toBe('full');
    expect(
      await reports.keepReport(report(6, 0, { sender: 0 }), [report(5, 0, { sender: 0 })]),
    ).toBe('kept');
    await reports.removeReports({ sender: 7 });
    expect(await reports.keepReport(report(6, 0, { sender: 1_000_000 }))).toBe('kept');
  });
});
