/** What is tapped, and how large it is for a finger. */
import type { Page } from '@playwright/test';

/** Phones held upright, and lying. */
const PHONES = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 640, height: 360 },
  { width: 844, height: 390 },
];

/** What of all that can be tapped here is narrower or lower than 44 px on a phone, with what is folded unfolded. */
export async function smallTargets(page: Page): Promise<string[]> {
  const before = page.viewportSize()!;
  const found: string[] = [];
  for (const phone of PHONES) {
    await page.setViewportSize(phone);
    found.push(...(await page.evaluate(small)).map((one) => `${phone.width} wide: ${one}`));
  }
  await page.setViewportSize(before);
  return found;
}

/** Runs in the page. A link in running text is as high as its line, and what is `inert` only shows. */
async function small(): Promise<string[]> {
  const folded = [...document.querySelectorAll<HTMLDetailsElement>('details:not([open])')];
  for (const one of folded) one.open = true;
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const controls = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
  const roles = ['button', 'tab', 'radio', 'checkbox', 'switch', 'slider', 'gridcell'];
  const tapped = [controls, ...roles.map((role) => `[role="${role}"]`)].join();
  const isInText = (element: HTMLElement) =>
    getComputedStyle(element).display === 'inline' &&
    element.parentElement!.textContent!.trim() !== element.textContent!.trim();
  /** The larger of the element and of what is written to it as its label: either is tapped. */
  const sides = (element: HTMLElement) =>
    [element, ...((element as HTMLInputElement).labels ?? [])]
      .map((part) => part.getBoundingClientRect())
      .map(({ width, height }) => [width, height].toSorted((a, b) => a - b))
      .reduce((one, other) => (one[0]! < other[0]! ? other : one));
  const found = [...document.querySelectorAll<HTMLElement>(tapped)]
    .filter((element) => element.checkVisibility({ visibilityProperty: true }))
    .filter((element) => !element.closest('[inert]') && !isInText(element))
    .filter((element) => sides(element)[0]! < 43.99)
    .map((element) => {
      const [narrow, long] = sides(element).map((side) => side.toFixed(1));
      return `${narrow} by ${long} px: ${element.outerHTML.slice(0, 110)}`;
    });
  for (const one of folded) one.open = false;
  return found;
}
