/** Builds the study of costly lessons with the app's own builder, because Node 20 reads no TypeScript, and runs it, a process a lesson. */
import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { build } from 'vite';

const outDir = resolve('node_modules/.cache/lessons');
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: 'tests/bench/lessons.ts', outDir, emptyOutDir: true },
  ssr: { noExternal: true },
});
const study = (words, input = '') =>
  execFileSync(process.execPath, [resolve(outDir, 'lessons.js'), ...words], {
    encoding: 'utf8',
    input,
  });
const lessons = study(['make', ...process.argv.slice(2)]);
for (const lesson of lessons.trim().split('\n')) process.stdout.write(study(['tell'], lesson));
rmSync(outDir, { recursive: true });
