import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { build } from 'vite';
import type { Answer } from '../../../src/store/log.ts';

const ADDRESS = 'http://localhost:1/log';
let script: Promise<string> | undefined;

/** A tab with nothing on it but the log. */
export async function openTab(context: BrowserContext): Promise<Page> {
  script ??= buildScript();
  const body = `<script>${await script}</script>`;
  const tab = await context.newPage();
  await tab.route(ADDRESS, (route) => route.fulfill({ contentType: 'text/html', body }));
  await tab.goto(ADDRESS);
  return tab;
}

async function buildScript(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'skipwise-log-'));
  const entry = join(import.meta.dirname, 'page.ts');
  await build({
    configFile: false,
    logLevel: 'error',
    build: { outDir: folder, lib: { entry, formats: ['iife'], name: 'unused', fileName: 'page' } },
  });
  const text = await readFile(join(folder, 'page.iife.js'), 'utf8');
  await rm(folder, { recursive: true });
  return text;
}

export const answer: Answer = {
  item: 'spot:Bb major:2:seventh:guitar:4-3-2-1:2-6',
  seed: 4_294_967_295,
  at: 1_790_000_000_000,
  offset: 120,
  right: true,
  takenFor: null,
  ms: 4321,
  sounded: 1200,
  taps: 1,
  hidden: false,
  grade: 3,
};
