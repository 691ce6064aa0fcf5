/** How little stands between somebody and the first card, whatever other kinds of card the lesson has. How large the files are is held by `tests/size.mjs`. */
import { expect, test } from '@playwright/test';
import { plainLink, wayToFirstCard, type Way } from './firstCard.ts';

/** The page, its scripts and its icon; nothing else until a card can be answered. Bytes are those on the wire. */
const MOST = { requests: 8, bytes: 56_000 };

test('a first visit asks for few files until its first card can be answered', async ({
  page,
  baseURL,
}) => {
  expectLittle(await wayToFirstCard(page, baseURL!));
});

test('so does the link of a lesson with cards by ear as well', async ({ page, baseURL }) => {
  expectLittle(await wayToFirstCard(page, await plainLink(baseURL!)));
});

function expectLittle({ requests, bytes }: Way): void {
  expect(requests).toBeGreaterThan(2);
  expect(requests).toBeLessThanOrEqual(MOST.requests);
  expect(bytes).toBeLessThan(MOST.bytes);
}
