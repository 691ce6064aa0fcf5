// How much a phone fetches, gzipped: the page with its styles and entry script, and everything kept for offline.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const LIMITS = { 'page with styles and entry script': 30, 'everything kept for offline': 400 };

const html = readFileSync('dist/index.html', 'utf8');
const entry = /<script type="module"[^>]*src="\.\/([^"]+)"/.exec(html)[1];
const hints = html.matchAll(/<link rel="modulepreload"[^>]*href="\.\/([^"]+)"/g);
const first = [...new Set([...hints].map((hint) => hint[1]))];
const started = withImports(entry);
const page = weigh('index.html') + sum(started);
const sizes = {
  'page with styles and entry script': page,
  'everything kept for offline': sum(files('dist')),
};

let over = false;
for (const [name, bytes] of Object.entries(sizes)) {
  const kB = bytes / 1000;
  over ||= kB > LIMITS[name];
  console.log(`${name}: ${kB.toFixed(1)} kB gz, at most ${LIMITS[name]}`);
}
const rest = sum(first.filter((file) => !started.includes(file)));
console.log(`with the scripts of the first screen: ${((page + rest) / 1000).toFixed(1)} kB gz`);
if (over) {
  console.error('Over the limit: find what grew, or load it later.');
  process.exit(1);
}

/** A script and all that it imports before it runs. */
function withImports(file, found = []) {
  if (found.includes(file)) return found;
  found.push(file);
  const code = readFileSync(join('dist', file), 'utf8');
  for (const [, name] of code.matchAll(/\b(?:import|from)\s*["'`]\.\/([^"'`]+)["'`]/g)) {
    withImports(`assets/${name}`, found);
  }
  return found;
}

function sum(names) {
  return names.reduce((total, file) => total + weigh(file), 0);
}

function weigh(file) {
  return gzipSync(readFileSync(join('dist', file)), { level: 9 }).length;
}

function files(folder) {
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => statSync(join(folder, file)).isFile() && file !== '_headers');
}
