/** The README's pictures. */
import { test, type Page } from '@playwright/test';
import { SCREENS } from './screens.ts';

test.use({ viewport: { width: 390, height: 844 } });

const LIGHT = {
  teach: 'teach',
  share: 'share',
  new: 'new-card',
  'spot-why': 'card-spot-verdict',
  'place-why': 'card-place-verdict',
  trace: 'card-trace',
  known: 'known',
  neck: 'neck',
};
const DARK = { today: 'today-begun' };

for (const [colorScheme, pictures] of [
  ['light', LIGHT],
  ['dark', DARK],
] as const)
  for (const [name, screen] of Object.entries(pictures))
    test(name, async ({ page, baseURL }) => {
      await page.emulateMedia({ colorScheme });
      await SCREENS[screen]!(page, baseURL!);
      await still(page);
      await page.screenshot({ path: `tests/pictures/${name}.png` });
    });

async function still(page: Page) {
  await page.evaluate(() => scrollTo(0, 0));
  await page.waitForTimeout(300);
}
