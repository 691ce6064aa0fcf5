import { defineConfig } from '@playwright/test';
import app from '../browser/playwright.config.ts';

/** Measures the built app in the browser that its tests run in, with the machine to itself. */
export default defineConfig({
  ...app,
  testDir: 'pages',
  outputDir: '../../test-results/measured',
  workers: 1,
  retries: 0,
  timeout: 300_000,
  reporter: [['line']],
  // The worker that keeps the app costs its time, as on a phone.
  use: { ...app.use, serviceWorkers: 'allow' },
  projects: [{ name: 'pages', testMatch: '*.spec.ts' }],
});
