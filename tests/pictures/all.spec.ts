/**
 * Every screen at six sizes, light and dark, to be looked at one by one; on the smallest phone also with all that is
 * scrolled to, and so with text twice the size.
 */
import { test, type Page } from '@playwright/test';
import { SCREENS } from './screens.ts';

const SIZES = [
  [360, 640],
  [390, 844],
  [412, 915],
  [640, 360],
  [820, 1180],
  [1280, 800],
] as const;

for (const [name, comeTo] of Object.entries(SCREENS))
  test(name, async ({ page }) => {
    await comeTo(page, test.info().project.use.baseURL!);
    for (const colorScheme of ['light', 'dark'] as const)
      for (const [width, height] of SIZES) {
        await page.setViewportSize({ width, height });
        await page.emulateMedia({ colorScheme });
        await settle(page);
        const path = `test-results/pictures/${width}x${height}-${colorScheme}/${name}.png`;
        await page.screenshot({ path });
      }
    await page.setViewportSize({ width: 360, height: 640 });
    await settle(page);
    await page.screenshot({ path: `test-results/pictures/whole/${name}.png`, fullPage: true });
    await page.evaluate(() => (document.documentElement.style.fontSize = '200%'));
    await settle(page);
    await page.screenshot({ path: `test-results/pictures/200/${name}.png`, fullPage: true });
  });

/** Waits until what follows the size has been drawn, and what moves stands. */
async function settle(page: Page) {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
  await page.waitForTimeout(250);
}
