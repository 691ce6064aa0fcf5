import { expect, test } from '@playwright/test';
import {
  answerOne,
  askedSoFar,
  lessonLink,
  next,
  openCard,
  question,
  SMALL,
  startLesson,
} from './people.ts';

const ELSEWHERE = 'This round is open in another window';

let small: string;

test.beforeAll(async ({ baseURL }) => {
  small = await lessonLink({ ...SMALL, title: 'Monday: seven steps' }, baseURL!);
});

test('of two windows in one round only one asks, the other says so and takes over where it stands', async ({
  context,
}) => {
  const first = await context.newPage();
  await startLesson(first, small);
  const begun = (await question(first))!;
  const second = await context.newPage();
  await second.goto('#/round');
  await expect(second.getByRole('heading', { name: ELSEWHERE })).toBeVisible();
  await expect(openCard(second)).toHaveCount(0);

  await answerOne(first);
  await next(first);
  const left = (await question(first))!;
  expect(left.item).not.toBe(begun.item);
  await second.getByRole('button', { name: 'Go on here' }).click();
  const taken = (await question(second))!;
  expect([taken.item, taken.seed]).toEqual([left.item, left.seed]);
  await expect(first.getByRole('heading', { name: ELSEWHERE })).toBeVisible();
  await expect(openCard(first)).toHaveCount(0);
  await answerOne(second);
  await next(second);

  // A window that is closed needs no taking over.
  const open = (await question(second))!;
  await second.close();
  const back = (await question(first))!;
  expect([back.item, back.seed]).toEqual([open.item, open.seed]);
  await first.getByRole('button', { name: 'Leave the round' }).click();
  await expect(askedSoFar(first)).toContainText('2 of 7 asked so far');
});

test('where the browser has no locks a round goes on in each window', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'locks', { value: undefined });
  });
  await startLesson(page, small);
  await answerOne(page);
  await next(page);
  await expect(openCard(page)).toBeVisible();
});
