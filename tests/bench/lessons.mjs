/** Builds the study of costly lessons with the app's own builder, because Node 20 reads no TypeScript, and runs it. */
import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const outDir = resolve('node_modules/.cache/lessons');
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: 'tests/bench/lessons.ts', outDir, emptyOutDir: true },
  ssr: { noExternal: true },
});
await import(pathToFileURL(resolve(outDir, 'lessons.js')).href);
rmSync(outDir, { recursive: true });
