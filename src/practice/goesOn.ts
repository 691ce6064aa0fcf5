import type { Report } from '../decks/report.ts';

/**
 * Whether a report can be of the same log as one before it, which it may be as late as: a log only grows. So no answer, no
 * item that was asked and no day of practice is gone. What goes on from what goes on from a report goes on from that report.
 */
export function goesOn(report: Report, before: Report): boolean {
  const days = report.day - before.day;
  const grew = (what: 'asked' | 'firstAsked' | 'firstRight') => report[what] >= before[what];
  return (
    days >= 0 &&
    grew('asked') &&
    grew('firstAsked') &&
    grew('firstRight') &&
    report.items.length === before.items.length &&
    before.items.every((item, i) => item === null || report.items[i] !== null) &&
    before.practised.slice(days).every((did, i) => !did || report.practised[i])
  );
}
