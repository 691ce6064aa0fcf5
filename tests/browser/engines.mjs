import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';

const SHELL = 'chromium-headless-shell';
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The Chromium on this machine, Playwright's own or the system's; undefined where there is none. */
export function chromiumPath() {
  if (process.env.CHROME_PATH) return process.env.CHROME_PATH;
  if (existsSync(chromium.executablePath())) return chromium.executablePath();
  return NAMES.map((name) => which(name)).find((path) => path !== undefined);
}

/**
 * Chromium's shell, which is the same engine without the windows of a browser around it: a page costs it a third of the
 * processor. Any Chromium where there is no shell.
 */
export function shellPath() {
  return process.env.CHROME_PATH ?? which(SHELL) ?? chromiumPath();
}

/** Installs the shell where Debian's package is the way; elsewhere what is there will do. */
export function installShell() {
  if (!process.env.CHROME_PATH && !which(SHELL)) installPackages(SHELL);
}

/** Installs one where there is none: Debian's package where that is the way, Playwright's download elsewhere. */
export function installChromium() {
  if (installPackages('chromium') && chromiumPath()) return;
  run('npx', ['playwright', 'install', 'chromium']);
}

/** Whether there is a WebKit that takes orders (WebKitGTK's driver), and a screen for it that nobody sees. */
export function hasWebKit() {
  return which('WebKitWebDriver') !== undefined && which('Xvfb') !== undefined;
}

/** Installs WebKit where Debian's packages are the way; elsewhere there is none to be driven. */
export function installWebKit() {
  installPackages('webkit2gtk-driver', 'xvfb');
}

/**
 * Whether there is a Firefox that takes orders: Debian's, which its name tells from others. Without a loudspeaker its clock
 * of sound stands still, so that there has to be what can play one: PulseAudio.
 */
export function hasFirefox() {
  return which('firefox-esr') !== undefined && which('pulseaudio') !== undefined;
}

/** Installs both where Debian's packages are the way. */
export function installFirefox() {
  installPackages('firefox-esr', 'pulseaudio');
}

/** Whether there is libxml2's `xmllint`, which reads the MusicXML that is written. */
export function hasXmllint() {
  return which('xmllint') !== undefined;
}

/** Installs it where Debian's packages are the way. */
export function installXmllint() {
  installPackages('libxml2-utils');
}

function installPackages(...names) {
  if (!which('apt-get') || process.getuid?.() !== 0) return false;
  return run('apt-get', ['update', '-q']) && run('apt-get', ['install', '-y', '-q', ...names]);
}

/** Runs a command; whether it succeeded. */
function run(command, args) {
  try {
    execFileSync(command, args, { stdio: 'inherit' });
    return true;
  } catch (error) {
    console.error(`${error.message}`);
    return false;
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
