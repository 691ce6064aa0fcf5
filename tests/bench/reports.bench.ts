/** A class of 200 students with ten reports each, on lessons of 150 items: from stored links to the sorted class. */
import { bench, describe } from 'vitest';
import { readReport, reportLink, type Report } from '../../src/decks/report.ts';
import { classOf } from '../../src/practice/class.ts';
import type { Item } from '../../src/practice/item.ts';
import { seeded } from '../../src/theory/random.ts';

const [STUDENTS, LESSONS] = [200, 10];
const random = seeded(11);

const items: Item[] = Array.from({ length: 150 }, (_, i) => ({
  id: `spot:Bb major:${(i % 7) + 1}:triad:guitar:5-4:${1 + Math.floor(i / 7)}-${8 + Math.floor(i / 7)}`,
  kind: 'spot',
  key: { tonic: 'Bb', scale: 'major' },
  size: 'triad',
  degree: (i % 7) + 1,
  strings: '5-4',
}));

function made(sender: number, lesson: number): Report {
  return {
    deck: lesson,
    sender,
    day: 20_700 + 7 * lesson,
    minute: random.below(1440),
    practised: Array.from({ length: 28 }, () => random.next() < 0.6),
    asked: 800,
    firstAsked: 750,
    firstRight: 600,
    seconds: { spot: 3.2 },
    items: items.map(() =>
      random.next() < 0.1
        ? null
        : {
            recall: random.next(),
            ease: random.next() - 0.5,
            answers: 1 + random.below(9),
            slow: false,
            misses: random.below(3),
            takenFor: null,
          },
    ),
    time: { figures: [], minutes: null },
    askedAbout: [],
    question: random.next() < 0.3 ? 'How do I finger the third one?' : '',
    name: `Student ${sender}`,
  };
}

const stored = Array.from({ length: STUDENTS * LESSONS }, (_, i) => {
  const report = made(i % STUDENTS, Math.floor(i / STUDENTS));
  return { ...report, link: reportLink(report, '') };
});

const filed = () =>
  stored.map(({ link, sender, deck, day, minute }) => {
    let opened: { report: Report; items: Item[]; ahead: number } | undefined;
    const open = () => {
      if (opened) return opened;
      const read = readReport(link);
      if ('fault' in read) throw new Error(read.fault);
      return (opened = { report: read.report, items, ahead: 7 });
    };
    return { sender, deck, day, minute, open };
  });

describe('2,000 reports', () => {
  bench('the class to be seen first', () => void classOf(filed(), LESSONS - 1));
  bench('with the weeks of every student', () => {
    for (const student of classOf(filed(), LESSONS - 1)) student.weeks();
  });
  bench('all read', () => {
    for (const one of filed()) one.open();
  });
});
