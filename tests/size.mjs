// How much a phone fetches, gzipped: the page with its styles and entry script, and everything kept for offline.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const LIMITS = { 'page with styles and entry script': 30, 'everything kept for offline': 400 };

const html = readFileSync('dist/index.html', 'utf8');
const entry = /<script type="module"[^>]*src="\.\/([^"]+)"/.exec(html)[1];
const first = [...html.matchAll(/<link rel="modulepreload"[^>]*href="\.\/([^"]+)"/g)].map(
  (hint) => hint[1],
);
const page = weigh('index.html') + weigh(entry);
const sizes = {
  'page with styles and entry script': page,
  'everything kept for offline': files('dist').reduce((sum, file) => sum + weigh(file), 0),
};

let over = false;
for (const [name, bytes] of Object.entries(sizes)) {
  const kB = bytes / 1000;
  over ||= kB > LIMITS[name];
  console.log(`${name}: ${kB.toFixed(1)} kB gz, at most ${LIMITS[name]}`);
}
const rest = first.reduce((sum, file) => sum + weigh(file), 0);
console.log(`with the scripts of the first screen: ${((page + rest) / 1000).toFixed(1)} kB gz`);
if (over) {
  console.error('Over the limit: find what grew, or load it later.');
  process.exit(1);
}

function weigh(file) {
  return gzipSync(readFileSync(join('dist', file)), { level: 9 }).length;
}

function files(folder) {
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => statSync(join(folder, file)).isFile() && file !== '_headers');
}
