// How much a phone fetches, kB gzipped: the page, all until the first card can be answered, and what is kept for offline.
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

const LIMITS = {
  'the page with its styles and first screen': 7.6,
  'a first visit, to its first card': 49,
  'a lesson’s link, to its first card': 50,
  'everything kept for offline': 260,
};

const html = readFileSync('dist/index.html', 'utf8');
const [first] = found(/<script type="module"[^>]*src="\.\/([^"]+)"/g, html);
const [ofLink, ofFirst] = found(/\[('\.\/assets[^\]]+)\]/g, html).map((list) =>
  found(/\.\/(assets\/[^']+)'/g, list),
);
const worker = readFileSync('dist/worker.js', 'utf8');
const kept = found(/\burl:\s*["'`]([^"'`]+)["'`]|"url":"([^"]+)"/g, worker);
const page = weigh('index.html');

const sizes = {
  'the page with its styles and first screen': page,
  'a first visit, to its first card': page + sum([first, ...ofFirst]),
  'a lesson’s link, to its first card': page + sum([first, ...ofLink]),
  'everything kept for offline': sum(kept),
};
if (!ofFirst?.length || !ofLink?.length || kept.length < 20)
  throw new Error('What is fetched was not found.');

let over = false;
for (const [name, bytes] of Object.entries(sizes)) {
  const kB = bytes / 1000;
  over ||= kB > LIMITS[name];
  console.log(`${name}: ${kB.toFixed(1)} kB gz, at most ${LIMITS[name]}`);
}
if (over) {
  console.error('Over the limit: find what grew, or load it later.');
  process.exit(1);
}

function found(pattern, text) {
  return [...text.matchAll(pattern)].map(([, name, other]) => name ?? other);
}

function sum(names) {
  return names.reduce((total, name) => total + weigh(name), 0);
}

function weigh(name) {
  return gzipSync(readFileSync(`dist/${name}`), { level: 9 }).length;
}
