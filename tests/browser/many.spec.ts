/** As much as there can be: a log of 100,000 answers read from a file, and as many reports as a device keeps. */
import { writeFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import { deckId, readDeck, writeDeck } from '../../src/decks/document.ts';
import { deckMark, reportLink, type Report } from '../../src/decks/report.ts';
import { itemsOf } from '../../src/cards/index.ts';
import { writeBackup, type Backup } from '../../src/store/backup.ts';
import { MOST_REPORTS } from '../../src/store/reports.ts';
import { seeded } from '../../src/theory/random.ts';
import { reviewOf } from '../memory/reviews.ts';

const NOW = Date.now();
const DAY = 86_400_000;

const EMPTY: Backup = {
  reviews: [],
  decks: [],
  drafts: [],
  reports: [],
  minutes: [],
  timings: [],
  quarantined: [],
};

/** Chooses a backup under _Sound and names_. */
async function readFile(page: Page, backup: Partial<Backup>): Promise<void> {
  const file = test.info().outputPath('backup.txt');
  await writeFile(file, writeBackup({ ...EMPTY, ...backup }, NOW));
  await page.locator('input[type="file"]').setInputFiles(file);
}

test('reading 100,000 answers shows how far it is, keeps the page alive, and can be stopped', async ({
  page,
}) => {
  const reviews = Array.from({ length: 100_000 }, (_, k) =>
    reviewOf({ n: k + 1, at: NOW - (100_000 - k) * 60_000, seed: k, device: 'old phone' }),
  );
  await page.goto('#/settings');
  await readFile(page, { reviews });
  const bar = page.getByRole('progressbar', { name: 'How much of the file is read' });
  await expect.poll(() => bar.getAttribute('value').then(Number)).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped. Nothing was changed.')).toBeVisible();
  await expect(bar).toHaveCount(0);
  await expect(page.getByText(/^0 answers on this device/)).toBeVisible();
});

test('a class of as many reports as are kept is there at once, its rows as they are needed', async ({
  page,
}) => {
  const read = readDeck({
    version: 1,
    title: 'Thursday, all of the town',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  const { deck } = read;
  const [id, random, items] = [deckId(deck), seeded(5), itemsOf(deck)];
  const reports = Array.from({ length: MOST_REPORTS }, (_, sender) => {
    const report: Report = {
      deck: deckMark(id),
      sender,
      day: Math.floor(NOW / DAY) - 1,
      minute: 600,
      practised: Array.from({ length: 28 }, () => random.next() < 0.5),
      asked: 50,
      firstAsked: 40,
      firstRight: 30,
      seconds: { spot: 3 },
      items: items.map(() => ({
        recall: random.next(),
        ease: 0,
        answers: 3,
        slow: false,
        misses: random.below(3),
        takenFor: null,
      })),
      time: { figures: [], minutes: null },
      askedAbout: [],
      question: '',
      name: `Student ${sender}`,
    };
    const { day, minute } = report;
    return { sender, deck: report.deck, day, minute, link: reportLink(report, '') };
  });
  await page.goto('#/settings');
  await readFile(page, {
    decks: [{ id, document: writeDeck(deck), added: NOW, away: true }],
    reports,
  });
  await expect(
    page.getByText(`1 lesson and ${MOST_REPORTS} reports more than before.`),
  ).toBeVisible({
    timeout: 60_000,
  });

  await page.goto('#/class');
  const rows = page.getByRole('link', { name: /Student \d+/ });
  await expect(rows.first()).toBeVisible();
  const drawn = await rows.count();
  expect(drawn).toBeLessThan(100);
  await rows.last().scrollIntoViewIfNeeded();
  await expect.poll(() => rows.count()).toBeGreaterThan(drawn);
  expect(await rows.count()).toBeLessThan(200);

  for (const name of ['Remove all reports on this lesson', 'Remove', 'Yes, remove them'])
    await page.getByRole('button', { name, exact: true }).click();
  await expect(page.getByText(/^None yet\./)).toBeVisible();
});
