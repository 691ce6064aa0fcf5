import { defineConfig } from '@playwright/test';
import { chromiumPath, shellPath } from './engines.mjs';

const port = Number(process.env.BROWSER_PORT ?? 4187);
const HEARD = ['by-ear.spec.ts', 'engines.spec.ts', 'listening.spec.ts', 'pulse.spec.ts'];
const MEASURED = ['log-long.spec.ts', 'sound-live.spec.ts'];

/** How a Chromium is launched. */
const launched = (executablePath = '') => ({
  launchOptions: {
    executablePath,
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
});

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/pages',
  // Three at once on two processors: half of a test is waiting, for clocks, sound and the device.
  workers: 3,
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
    // To fetch and keep all files costs each phone as much as all that a short test does. Where the worker is refused the app
    // goes on without it; what goes offline, is updated or evicted lets it in, and so does what tells of it.
    serviceWorkers: 'block',
    ...launched(chromiumPath()),
  },
  projects: [
    // Run again it is told apart from what always fails; `npm test` fails all the same.
    {
      name: 'app',
      testMatch: '*.spec.ts',
      testIgnore: [...HEARD, ...MEASURED],
      retries: 1,
      use: launched(shellPath()),
    },
    // What is heard or tapped in time takes its own, and little of the processor's, so that several go on at once; it is
    // tried three times.
    {
      name: 'heard',
      testMatch: HEARD,
      workers: 2,
      retries: 2,
      dependencies: ['app'],
    },
    // What is measured in real time has the machine for itself, after everything else, and is tried three times.
    {
      name: 'measured',
      testMatch: MEASURED,
      workers: 1,
      retries: 2,
      dependencies: ['heard'],
    },
  ],
  webServer: {
    command: 'npx vite preview',
    cwd: '../..',
    env: { PORT: String(port) },
    url: `http://localhost:${port}/`,
    reuseExistingServer: false,
  },
});
