// Everything that must pass, in order, stopping at the first that does not; last of all, how many tests there were.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import {
  chromiumPath,
  hasFirefox,
  hasWebKit,
  installChromium,
  installFirefox,
  installWebKit,
} from './browser/engines.mjs';

mkdirSync('test-results', { recursive: true });

run('npm', ['run', '--silent', 'check']);
run('npx', [
  'vitest',
  'run',
  '--reporter=default',
  '--reporter=json',
  '--outputFile.json=test-results/unit.json',
]);
run('npm', ['run', '--silent', 'build']);
run('npm', ['run', '--silent', 'size']);

if (!chromiumPath()) installChromium();
if (!chromiumPath()) {
  fail(
    'No Chromium was found and none could be installed: install one, or set CHROME_PATH to it, then run npm test again.',
  );
}
if (!hasWebKit()) installWebKit();
if (!hasWebKit()) console.log('There is no WebKit to be driven here: its tests are skipped.');
if (!hasFirefox()) installFirefox();
if (!hasFirefox()) console.log('There is no firefox-esr to be driven here: its tests are skipped.');
run('npx', ['playwright', 'test', '--config', 'tests/browser/playwright.config.ts']);

const unit = JSON.parse(readFileSync('test-results/unit.json', 'utf8'));
const { stats } = JSON.parse(readFileSync('test-results/browser.json', 'utf8'));
const passed = unit.numPassedTests + stats.expected + stats.flaky;
const failed = unit.numFailedTests + stats.unexpected;
const skipped = unit.numPendingTests + stats.skipped;
if (stats.flaky > 0) console.log(`${stats.flaky} passed only when run again`);
console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);

function run(command, args) {
  const { status } = spawnSync(command, args, { stdio: 'inherit' });
  if (status !== 0) fail(`${command} ${args.join(' ')} failed.`);
}

function fail(sentence) {
  console.error(sentence);
  process.exit(1);
}
