import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The Chromium on this machine, Playwright's own or the system's; undefined where there is none. */
export function chromiumPath() {
  if (process.env.CHROME_PATH) return process.env.CHROME_PATH;
  if (existsSync(chromium.executablePath())) return chromium.executablePath();
  return NAMES.map((name) => which(name)).find((path) => path !== undefined);
}

/** Installs one where there is none: Debian's package where that is the way, Playwright's download elsewhere. */
export function installChromium() {
  const ways = [
    ...(which('apt-get') && process.getuid?.() === 0
      ? [
          [
            ['apt-get', ['update', '-q']],
            ['apt-get', ['install', '-y', '-q', 'chromium']],
          ],
        ]
      : []),
    [['npx', ['playwright', 'install', 'chromium']]],
  ];
  for (const steps of ways) {
    try {
      for (const [command, args] of steps) execFileSync(command, args, { stdio: 'inherit' });
      if (chromiumPath()) return;
    } catch (error) {
      console.error(`${error.message}`);
    }
  }
}

function which(name) {
  try {
    return execFileSync('which', [name], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim();
  } catch {
    return undefined;
  }
}
