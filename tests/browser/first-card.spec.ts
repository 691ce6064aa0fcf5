/** How little stands between somebody and the first card. How many bytes that may be is held by `tests/size.mjs`. */
import { expect, test } from '@playwright/test';
import { plainLink, wayToFirstCard } from './firstCard.ts';

/** The page, its scripts, its icon and its manifest; nothing else until a card can be answered. */
const MOST = 8;

test('a first visit asks for few files until its first card can be answered', async ({
  page,
  baseURL,
}) => {
  const { requests } = await wayToFirstCard(page, baseURL!);
  expect(requests).toBeGreaterThan(2);
  expect(requests).toBeLessThanOrEqual(MOST);
});

test('so does a lesson’s link', async ({ page, baseURL }) => {
  const { requests } = await wayToFirstCard(page, await plainLink(baseURL!));
  expect(requests).toBeGreaterThan(2);
  expect(requests).toBeLessThanOrEqual(MOST);
});
