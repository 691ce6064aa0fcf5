/** The neck as it lies in the left hand: the strings the other way round where it stands, the nut where it lies. */
import { expect, test, type Page } from '@playwright/test';

async function at(page: Page, string: number, fret: number) {
  const box = await page
    .locator(`[data-tuning] [data-string="${string}"][data-fret="${fret}"]`)
    .first()
    .boundingBox();
  return { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 };
}

for (const hand of ['right', 'left'] as const) {
  const way = hand === 'left' ? -1 : 1;

  test(`in the ${hand} hand the neck stands with its nut at the top`, async ({ page }) => {
    await page.goto(`#/neck/Bb-major${hand === 'left' ? '/left-handed' : ''}`);
    const [sixth, first, higher] = [
      await at(page, 6, 1),
      await at(page, 1, 1),
      await at(page, 6, 4),
    ];
    expect(way * (first.x - sixth.x)).toBeGreaterThan(100);
    expect(higher.y).toBeGreaterThan(sixth.y + 100);
    expect(higher.x).toBeCloseTo(sixth.x, 0);
  });

  test(`in the ${hand} hand the neck lies with its highest string on top`, async ({ page }) => {
    await page.setViewportSize({ width: 844, height: 390 });
    await page.goto(`#/neck/Bb-major${hand === 'left' ? '/left-handed' : ''}`);
    const [sixth, first, higher] = [
      await at(page, 6, 1),
      await at(page, 1, 1),
      await at(page, 6, 4),
    ];
    expect(sixth.y).toBeGreaterThan(first.y + 50);
    expect(way * (higher.x - sixth.x)).toBeGreaterThan(50);
    expect(higher.y).toBeCloseTo(sixth.y, 0);
  });
}
