/** Builds the simulation with the app's own builder, because Node 20 reads no TypeScript, and runs it. */
import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const outDir = resolve('node_modules/.cache/simulate');
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: 'tests/bench/simulate.ts', outDir, emptyOutDir: true },
  ssr: { noExternal: true },
});
await import(pathToFileURL(resolve(outDir, 'simulate.js')).href);
rmSync(outDir, { recursive: true });
