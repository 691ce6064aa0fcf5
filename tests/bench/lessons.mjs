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
const study = (...number) =>
  execFileSync(process.execPath, [resolve(outDir, 'lessons.js'), ...number], { encoding: 'utf8' });
const lessons = Number(study());
for (let lesson = 0; lesson < lessons; lesson++) process.stdout.write(study(String(lesson)));
rmSync(outDir, { recursive: true });
