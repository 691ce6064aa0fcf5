import { expect, it, vi } from 'vitest';
import type { Report } from '../../src/decks/report.ts';
import { DAY } from '../../src/memory/day.ts';

it('a report dated more than a day ahead is refused: it would shut out those that follow', async () => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  const { reportFault } = await import('../../src/app/report/reports.ts');
  const today = 20_700;
  // Late in the day: in the east the next one has begun.
  const now = today * DAY + 0.9 * DAY;
  const on = (day: number) => reportFault({ day, deck: 1 } as Report, now);
  expect(on(today)).toBeNull();
  expect(on(today + 1)).toBeNull();
  expect(on(today + 2)).toMatch(/dated in the future/);
});
