import { defineConfig } from '@playwright/test';
import { chromiumPath } from './engines.mjs';

const port = Number(process.env.BROWSER_PORT ?? 4187);
const MEASURED = ['log-long.spec.ts', 'sound*.spec.ts', 'listening.spec.ts', 'by-ear.spec.ts'];

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/pages',
  // Two at once: more only wait for the processor.
  workers: 2,
  fullyParallel: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  forbidOnly: !!process.env.CI,
  reporter: [['list'], ['json', { outputFile: '../../test-results/browser.json' }]],
  use: {
    baseURL: `http://localhost:${port}/`,
    viewport: { width: 360, height: 640 },
    hasTouch: true,
    actionTimeout: 15_000,
    launchOptions: {
      executablePath: chromiumPath() ?? '',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--autoplay-policy=no-user-gesture-required',
      ],
    },
  },
  projects: [
    // Run again it is told apart from what always fails; `npm test` fails all the same.
    { name: 'app', testMatch: '*.spec.ts', testIgnore: MEASURED, retries: 1 },
    // What is measured in real time has the machine for itself, after everything else, and is tried three times.
    { name: 'measured', testMatch: MEASURED, workers: 1, retries: 2, dependencies: ['app'] },
  ],
  webServer: {
    command: 'npx vite preview',
    cwd: '../..',
    env: { PORT: String(port) },
    url: `http://localhost:${port}/`,
    reuseExistingServer: false,
  },
});
