/** What the machine adds between a tap and its verdict, beside the half second that is meant, and how soon a tap is seen to be taken: npm run build && npm run verdict */
import { expect, test, type Page } from '@playwright/test';
import { startLesson, question, next } from '../../browser/people.ts';
import { spotLink } from '../../browser/firstCard.ts';

/** How many times slower the processor is, cards a run, and the half second between an answer and its verdict, ms. */
const SLOWER = 6;
const CARDS = 30;
const MEANT = 500;

test('from a tap to its verdict', async ({ page, baseURL }) => {
  await startLesson(page, await spotLink(baseURL!));
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  const taken: number[] = [];
  const added: number[] = [];
  while (added.length < CARDS && (await question(page))) {
    const times = await tapped(page);
    taken.push(times.taken);
    added.push(times.verdict - MEANT);
    await next(page);
  }
  expect(added.length).toBeGreaterThan(CARDS / 2);
  console.log(
    `${SLOWER} times slower, ${added.length} cards: a tap seen after ${told(taken)}; its verdict after ${MEANT} ms and ${told(added)}`,
  );
});

/** Taps a step; ms until the frame after which the card showed that, and until the one that showed the verdict. */
function tapped(page: Page): Promise<{ taken: number; verdict: number }> {
  return page.evaluate(
    () =>
      new Promise((resolve) => {
        const card = document.querySelector('[data-kind]')!;
        let taken = 0;
        const start = performance.now();
        new MutationObserver((_, observer) => {
          const isJudged = document.querySelector('[role="status"][data-verdict]') !== null;
          if (taken > 0 && !isJudged) return;
          if (isJudged) observer.disconnect();
          requestAnimationFrame(() => {
            const now = performance.now() - start;
            if (isJudged) resolve({ taken, verdict: now });
            else taken ||= now;
          });
        }).observe(card, { subtree: true, childList: true, attributes: true });
        document.querySelector<HTMLElement>('[data-kind] [data-answer]')!.click();
      }),
  );
}

function told(all: readonly number[]): string {
  const at = (share: number) =>
    all.toSorted((a, b) => a - b)[Math.min(all.length - 1, Math.floor(share * all.length))]!;
  return `${at(0.5).toFixed(0)} ms (95 %: ${at(0.95).toFixed(0)})`;
}
