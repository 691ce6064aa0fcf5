/**
 * Builds the study of costly lessons for a browser and runs it there, each lesson in three browsers of its own: first as a page does
 * that was just opened, then once more. `-- 7` takes other phrases.
 */
import { readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { chromium } from '@playwright/test';
import { build } from 'vite';
import { chromiumPath } from '../browser/engines.mjs';

const outDir = resolve('node_modules/.cache/lessons');
const lib = {
  entry: 'tests/bench/lessons.ts',
  formats: ['iife'],
  name: 'study',
  fileName: () => 'study.js',
};
await build({
  configFile: false,
  logLevel: 'error',
  build: { lib, outDir, emptyOutDir: true, copyPublicDir: false },
});
const study = readFileSync(resolve(outDir, 'study.js'), 'utf8');
rmSync(outDir, { recursive: true });

/** What `use` makes of a page that has the study and has made nothing yet. */
async function inPage(use) {
  const browser = await chromium.launch({ executablePath: chromiumPath() });
  const page = await browser.newPage();
  await page.addScriptTag({ content: study });
  // What a browser does as it starts takes both cores for a while.
  await page.waitForTimeout(1000);
  const got = await use(page);
  await browser.close();
  return got;
}

const number = Number(process.argv[2] ?? 0);
const documents = await inPage((page) =>
  page.evaluate((other) => globalThis.study.documents(other), number),
);
/** The middle one of each figure, of three browsers. */
function middle(runs) {
  const figures = Object.keys(runs[0]).map((name) => {
    const [, one] = runs.map((run) => run[name]).toSorted((a, b) => a - b);
    return `${name} ${one.toFixed(0)}`;
  });
  return figures.join(', ');
}

for (const [name, document] of documents) {
  const runs = [];
  for (let k = 0; k < 3; k++) {
    const costs = (page) => page.evaluate((one) => globalThis.study.costs(one), document);
    runs.push(await inPage(async (page) => [await costs(page), await costs(page)]));
  }
  console.log(`${name}, first: ${middle(runs.map(([first]) => first))}`);
  console.log(`${name}, then: ${middle(runs.map(([, then]) => then))}`);
}
