import { defineConfig } from '@playwright/test';
import app from '../browser/playwright.config.ts';

/** The pictures are taken in the same browser as the app's tests run in, one screen after the other. */
export default defineConfig({
  ...app,
  testDir: '.',
  outputDir: '../../test-results/pictures-traces',
  workers: 1,
  retries: 0,
  timeout: 300_000,
  reporter: 'list',
  projects: [
    { name: 'readme', testMatch: 'readme.spec.ts' },
    { name: 'all', testMatch: 'all.spec.ts' },
    { name: 'targets', testMatch: 'targets.spec.ts', workers: 3 },
  ],
});
