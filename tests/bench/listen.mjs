/** Builds the study of listening with the app's own builder, because Node 20 reads no TypeScript, and runs it. */
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const outDir = resolve('node_modules/.cache/listen-code');
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: 'tests/bench/listen.ts', outDir, emptyOutDir: true },
  ssr: { noExternal: true },
});
await import(pathToFileURL(resolve(outDir, 'listen.js')).href);
