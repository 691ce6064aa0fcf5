/** Whether whatever can be tapped on any screen is as large as a finger on a phone. */
import { expect, test } from '@playwright/test';
import { smallTargets } from '../browser/targets.ts';
import { SCREENS } from './screens.ts';

for (const [name, comeTo] of Object.entries(SCREENS))
  test(name, async ({ page }) => {
    await comeTo(page, test.info().project.use.baseURL!);
    expect(await smallTargets(page)).toEqual([]);
  });
