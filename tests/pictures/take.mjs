// Takes the README's pictures from the built app: npm run build && npm run pictures
import { chromium } from '@playwright/test';
import { preview } from 'vite';
import { chromiumPath } from '../browser/engines.mjs';

const server = await preview({ preview: { port: 4191 }, logLevel: 'silent' });
const browser = await chromium.launch({
  executablePath: chromiumPath(),
  args: ['--no-sandbox', '--disable-gpu', '--autoplay-policy=no-user-gesture-required'],
});
const page = await browser.newPage({ viewport: { width: 390, height: 844 }, colorScheme: 'light' });
const url = 'http://localhost:4191/';
const take = (name) => page.screenshot({ path: `tests/pictures/${name}.png` });

await page.goto(`${url}#/teach`);
await page
  .getByLabel('A note to the student')
  .fill('Strings 5 and 4 first. Sing the third before you play it.');
await page.evaluate(() => scrollTo(0, 0));
await take('teach');
await page.getByText('Share the link').click();
await page.locator('.qr').waitFor();
await take('share');
await page.getByText('Open it here').click();
await page.locator('[data-do="start"]').waitFor();
await page.locator('[data-do="start"]').click();

const taken = new Set();
for (let card = 0; card < 24; card++) {
  const root = page.locator('article[data-kind]');
  await root.waitFor();
  const kind = await root.getAttribute('data-kind');
  if (!taken.has(kind) && kind !== 'place') await take(kind);
  await answer(kind, card);
  await page.locator('[data-verdict]').waitFor();
  if (!taken.has(kind) && kind !== 'trace') await take(`${kind}-why`);
  taken.add(kind);
  await page.locator('[data-do="next"]').click();
  await page.locator('[data-verdict]').waitFor({ state: 'detached' });
}
await page.emulateMedia({ colorScheme: 'dark' });
await page.goto(`${url}#/today`);
await page.locator('[data-do="start"]').first().waitFor();
await take('today');
await page.emulateMedia({ colorScheme: 'light' });
await page.goto(`${url}#/known`);
await page.locator('[data-tuning]').waitFor();
await page.locator('[data-tuning]').scrollIntoViewIfNeeded();
await take('known');
await page.goto(`${url}#/neck`);
await page.locator('[data-tuning]').waitFor();
await take('neck');

await browser.close();
await server.close();

async function answer(kind, card) {
  if (kind === 'place') {
    for (let tap = 0; await page.getByText(/more notes?/).count(); tap++) {
      await page
        .locator('.cell.takes')
        .nth(3 * tap + (card % 3))
        .click();
    }
    return;
  }
  const answers = page.locator('[data-answer]');
  await answers.nth(card % (await answers.count())).click();
}
