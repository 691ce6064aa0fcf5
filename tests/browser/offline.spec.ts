import { expect, test, type BrowserContext, type Page } from '@playwright/test';
import { openHost, type Host } from './host.ts';
import {
  answerCards,
  answerOne,
  askedSoFar,
  lessonLink,
  linkIn,
  makeLesson,
  newCard,
  next,
  plan,
  question,
  roundEnd,
  shareLink,
  SMALL,
  startLesson,
  writeTablature,
} from './people.ts';

test.use({ serviceWorkers: 'allow' });

let host: Host | undefined;

test.afterEach(async () => {
  await host?.close();
  host = undefined;
});

test('after the first visit, by a lesson link, everything works offline', async ({ page }) => {
  host = await openHost();
  await listen(page);
  const link = await lessonLink(SMALL, host.url);
  await page.goto(link);
  await expect(page.locator('[data-do="start"]')).toBeVisible();
  await isKept(page);
  await host.fallSilent();

  // Still on the first visit's page: the lesson and its sound.
  await page.locator('[data-do="start"]').click();
  await answerOne(page);
  await sounding(page);
  await next(page);
  await answerCards(page, 1);

  await page.reload();
  expect(await question(page)).not.toBeNull();
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(askedSoFar(page)).toContainText('2 of 7 asked so far');

  await page.getByRole('link', { name: 'Lessons' }).click();
  await expect(page.getByRole('button', { name: 'Take it' })).not.toHaveCount(0);
  await page.getByRole('button', { name: 'Take it' }).first().click();
  await page.locator('[data-do="start"]').click();
  await answerOne(page);

  const again = await makeLesson(page, { tonic: 'E', scale: 'minor' }, host.url);
  await page.goto(again);
  await expect(page.getByRole('main')).toContainText('E minor');
  await page.goto(`${host.url}#/settings`);
  await expect(page.getByRole('heading', { name: 'Sound and names' })).toBeVisible();
});

test('a whole lesson is made offline, with a phrase, and answered, and the next one made from its report', async ({
  page,
}) => {
  host = await openHost();
  await page.goto(host.url);
  await isKept(page);
  await host.fallSilent();
  await page.reload();

  await plan(page, { ...SMALL, title: 'Tuesday, quay side' }, host.url);
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await writeTablature(
    page,
    'e|-------3-6-3-|\nB|-----4-------|\nG|---5---------|\nD|-------------|\nA|-------------|\nE|-------------|',
  );
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: 'Variations', exact: true }).click();
  await page.locator('summary', { hasText: 'In the same key' }).click();
  await page.getByRole('button', { name: 'Compare' }).first().waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByText('Copy, save or print').click();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: /MIDI/ }).last().click();
  await saved;
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: 'Put it in the lesson' }).click();

  await startLesson(page, await shareLink(page));
  await answerCards(page, 3);
  await page.goto(`${host.url}#/send`);
  await page.goto(await linkIn(page.getByLabel('The report’s link')));
  await page.getByRole('button', { name: 'Make the next lesson' }).click();
  await expect(page.locator('.sentence')).toBeVisible();
});

test('under a sub-path it installs, works and keeps itself offline', async ({ page }) => {
  host = await openHost('/music/room/');
  await page.goto(host.url);
  await isKept(page);
  const scope = await page.evaluate(async () => (await navigator.serviceWorker.ready).scope);
  expect(scope).toBe(host.url);
  const manifest = await page.evaluate(async () => {
    const { href } = document.querySelector<HTMLLinkElement>('link[rel="manifest"]')!;
    const { start_url, icons } = await (await fetch(href)).json();
    const address = (path: string) => new URL(path, href).href;
    const pictures = icons.map(async ({ src }: { src: string }) => (await fetch(address(src))).ok);
    return { start: address(start_url), pictures: await Promise.all(pictures) };
  });
  expect(manifest.start.startsWith(host.url)).toBe(true);
  expect(manifest.pictures.every(Boolean)).toBe(true);

  await host.fallSilent();
  await page.reload();
  await page.locator('[data-do="start"]').first().click();
  await expect(newCard(page)).toBeVisible();
  const link = await makeLesson(page, SMALL, host.url);
  expect(link.startsWith(`${host.url}#/lesson/`)).toBe(true);
});

test('an update is told of, taken only when the student says so, and never in mid-card', async ({
  page,
}) => {
  host = await openHost();
  await page.goto(host.url);
  await isKept(page);
  await page.locator('[data-do="start"]').first().click();
  const open = (await question(page))!;

  await publish(host);
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  await waits(page);
  // A card is open: nothing is said, nothing is taken.
  await expect(page.getByText('A newer version is ready.')).toHaveCount(0);
  expect((await question(page))!.seed).toBe(open.seed);
  await answerOne(page);
  await next(page);
  await page.reload();
  expect(await question(page)).not.toBeNull();
  await expect(page).toHaveTitle('Skipwise');

  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(page.locator('.notice.update')).toContainText('A newer version is ready.');
  await page.getByRole('button', { name: 'Take it now' }).click();
  await expect(page).toHaveTitle('Skipwise, newer');
  await expect(askedSoFar(page)).toContainText(/^1 of \d+ asked so far/);
  await expect(page.getByText('A newer version is ready.')).toHaveCount(0);
});

test('a window that missed an update goes on with it by itself, but not in a round', async ({
  page,
  context,
}) => {
  host = await openHost();
  await page.goto(host.url);
  await isKept(page);
  const idle = await context.newPage();
  await idle.goto(host.url);
  await isKept(idle);
  const busy = await context.newPage();
  await startLesson(busy, await lessonLink(SMALL, host.url));
  const open = (await question(busy))!;
  await publish(host);
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  await waits(page);
  await page.getByRole('button', { name: 'Take it now' }).click();
  await expect(page).toHaveTitle('Skipwise, newer');
  await expect(idle).toHaveTitle('Skipwise, newer');
  await expect(busy).toHaveTitle('Skipwise');
  expect((await question(busy))!.seed).toBe(open.seed);
  await busy.getByRole('button', { name: 'Leave the round' }).click();
  await expect(busy).toHaveTitle('Skipwise, newer');
});

test('files that the browser took are fetched anew at the next start online', async ({ page }) => {
  host = await openHost();
  await page.goto(host.url);
  await isKept(page);
  const gone = () =>
    page.evaluate(async () => {
      // A script and its styles.
      let missing = 2;
      for (const name of await caches.keys()) {
        for (const { url } of await (await caches.open(name)).keys()) {
          if (/teacher-/.test(url)) missing--;
        }
      }
      return missing;
    });
  expect(await gone()).toBe(0);
  await page.evaluate(async () => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const { url } of await cache.keys()) if (/teacher-/.test(url)) await cache.delete(url);
    }
  });
  expect(await gone()).toBe(2);
  await page.reload();
  await expect.poll(gone).toBe(0);
  await host.fallSilent();
  await page.reload();
  await page.getByRole('link', { name: 'Teach', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Share the link' })).toBeVisible();
});

test('a window whose files are gone after an update takes the newer version by itself', async ({
  page,
  context,
}) => {
  const other = await takenBesideAnother(page, context, async (before) => {
    // Where something is being typed nothing happens by itself.
    await before.getByRole('link', { name: 'Lessons', exact: true }).click();
    await before.getByLabel('A link from your teacher').fill('http');
  });
  await expect(other.locator('.notice.update')).toContainText('Another window has taken');

  // The old version's screen is neither with the worker nor on the host any more.
  await other.evaluate(async () => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const { url } of await cache.keys()) if (/teacher-/.test(url)) await cache.delete(url);
    }
  });
  await host!.fallSilent();
  await other.getByRole('link', { name: 'Teach', exact: true }).click();
  await expect(other).toHaveTitle('Skipwise, newer');
});

test.describe('without a worker', () => {
  test.use({ serviceWorkers: 'block' });

  test('a screen that cannot be fetched says so, and can be loaded again', async ({ page }) => {
    await page.goto('');
    await expect(page.getByRole('heading').first()).toBeVisible();
    // As on a host that has a newer version: the page is online, and its old files are gone.
    await page.route(/\/teacher-/, (route) => route.fulfill({ status: 404 }));
    await page.getByRole('link', { name: 'Teach', exact: true }).click();
    const alert = page.getByRole('alert');
    await expect(alert).toContainText('could not be fetched. It may have changed');
    await expect(alert).not.toContainText('Go online');
    await page.unroute(/\/teacher-/);
    await page.getByRole('button', { name: 'Load again' }).click();
    await expect(page.getByRole('button', { name: 'Share the link' })).toBeVisible();
  });
});

test.describe('without a worker, after an update on the host', () => {
  test.use({ serviceWorkers: 'block' });

  test('a page whose old files are gone gets the newer version, not an error', async ({ page }) => {
    await page.goto('');
    await expect(page.getByRole('heading').first()).toBeVisible();
    await page.evaluate(() => Object.assign(window, { isOld: true }));
    await page.route(/\/teacher-/, (route) => route.fulfill({ status: 404 }));
    await page.route(
      ({ pathname }) => pathname === '/',
      async (route) => {
        const response = await route.fetch();
        if (route.request().isNavigationRequest()) {
          await page.unroute(/\/teacher-/);
          return route.fulfill({ response });
        }
        const html = (await response.text()).replaceAll(
          /(?<=assets\/index-)[\w-]+(?=\.js)/g,
          'newer',
        );
        return route.fulfill({ response, body: html });
      },
    );
    await page.getByRole('link', { name: 'Teach', exact: true }).click();
    await expect(page.getByRole('button', { name: 'Share the link' })).toBeVisible();
    expect(await page.evaluate(() => 'isOld' in window)).toBe(false);
  });
});

test('in a whole round with sound no request leaves the origin and the content policy is never broken', async ({
  page,
  context,
  baseURL,
}) => {
  const broken = await violations(page);
  const asked = requests(context);
  await listen(page);
  const response = (await page.goto(''))!;
  const policy = response.headers()['content-security-policy']!;
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("frame-ancestors 'none'");
  const meta = page.locator('meta[http-equiv="Content-Security-Policy"]');
  expect(policy).toContain((await meta.getAttribute('content'))!);
  expect(policy).not.toContain('unsafe');

  await startLesson(page, await makeLesson(page, { ...SMALL, kinds: ['spot'] }));
  await answerCards(page, 99);
  await expect(roundEnd(page)).toBeVisible();
  await startLesson(page, await makeLesson(page, { kinds: ['trace'] }));
  await page.locator('[data-do="hear"]').click();
  await sounding(page);
  await answerOne(page);
  await page.locator('[data-do="hear"]').click();
  for (const screen of ['today', 'lessons', 'settings']) {
    await page.goto(`#/${screen}`);
    await expect(page.getByRole('heading').first()).toBeVisible();
  }
  await isKept(page);
  expect(asked.size).toBeGreaterThan(10);
  expect([...asked].filter((url) => !url.startsWith(baseURL!))).toEqual([]);
  expect(broken).toEqual([]);
});

/** Puts a meter between what sounds and the loudspeaker. */
async function listen(page: Page) {
  await page.addInitScript(() => {
    const { connect } = AudioNode.prototype as { connect: (...to: unknown[]) => unknown };
    Object.assign(AudioNode.prototype, {
      connect(this: AudioNode, to: unknown, ...rest: unknown[]) {
        if (to instanceof AudioDestinationNode && to.context instanceof AudioContext) {
          const meter = new AnalyserNode(to.context);
          Object.assign(window, { meter });
          connect.call(this, meter);
        }
        return connect.call(this, to, ...rest);
      },
    });
  });
}

/** A newer version that a page takes while another window, which is returned, has the old one open. */
async function takenBesideAnother(
  page: Page,
  context: BrowserContext,
  busy: (other: Page) => Promise<void>,
): Promise<Page> {
  host = await openHost();
  await page.goto(host.url);
  await isKept(page);
  const other = await context.newPage();
  await other.goto(host.url);
  await isKept(other);
  await busy(other);
  await publish(host);
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  await waits(page);
  await page.getByRole('button', { name: 'Take it now' }).click();
  return other;
}

/** Waits until something is to be heard. */
async function sounding(page: Page) {
  await page.waitForFunction(() => {
    const { meter } = window as unknown as { meter?: AnalyserNode };
    const wave = new Float32Array(meter?.fftSize ?? 0);
    meter?.getFloatTimeDomainData(wave);
    return wave.some((value) => Math.abs(value) > 0.001);
  });
}

/** Waits until the worker has kept every file. */
async function isKept(page: Page) {
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

/** Waits until a newer worker has kept its files and waits for its turn. */
async function waits(page: Page) {
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null);
}

/** Publishes a version whose page has another title. */
async function publish(on: Host) {
  await on.change('index.html', (html) =>
    html.replace('<title>Skipwise<', '<title>Skipwise, newer<'),
  );
  await on.change('worker.js', (worker) =>
    worker.replace(/[0-9a-f]{32}(?=","url":"index\.html")/, 'newer'),
  );
}

/** Every address that is asked for from now on, by page or worker; `blob:` and `data:` are nobody's. */
function requests(context: BrowserContext): Set<string> {
  const urls = new Set<string>();
  context.on('request', (request) => {
    if (/^(https?|wss?):/.test(request.url())) urls.add(request.url());
  });
  return urls;
}

/** Whatever the content policy forbids from now on. */
async function violations(page: Page): Promise<string[]> {
  const found: string[] = [];
  await page.exposeFunction('violated', (what: string) => found.push(what));
  await page.addInitScript(() =>
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
      (window as unknown as { violated(what: string): void }).violated(
        `${violatedDirective} ${blockedURI}`,
      ),
    ),
  );
  page.on('console', (message) => {
    if (/content security policy/i.test(message.text())) found.push(message.text());
  });
  return found;
}
