import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { KIND_NAMES } from '../src/decks/kinds.ts';

/** From top to bottom: a room may import from those below it. */
const ROOMS = [
  'app',
  'making',
  'cards',
  'parts',
  'practice',
  'memory',
  'decks',
  'sound',
  'listening',
  'neck',
  'theory',
  'store',
  'signals',
];
const PURE = ['making', 'practice', 'memory', 'decks', 'listening', 'neck', 'theory'];

const files = readdirSync('src', { recursive: true })
  .map(String)
  .filter((file) => /\.tsx?$/.test(file));

const imports = files.flatMap((file) => {
  const text = readFileSync(join('src', file), 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']+)'/g)].map(([, path]) => ({
    file,
    path: relative('src', join('src', dirname(file), path!)),
  }));
});

const room = (path: string) => path.split('/')[0]!;

/** An arrow from what imports to what is imported. */
type Arrow = readonly [from: string, to: string];

/** Those from which arrows lead back to themselves. */
function inCircles(arrows: readonly Arrow[]): string[] {
  const next = new Map<string, string[]>();
  for (const [from, to] of arrows) next.set(from, [...(next.get(from) ?? []), to]);
  const returns = (start: string) => {
    const seen = new Set<string>();
    const open = [start];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      for (const to of next.get(at) ?? []) {
        if (to === start) return true;
        if (!seen.has(to)) open.push(to);
        seen.add(to);
      }
    }
    return false;
  };
  return [...next.keys()].filter(returns).toSorted();
}

/** All of listening but these works in Node over a file as it does in a browser. */
const LISTENING_IN_THE_BROWSER = ['index.ts', 'microphone.ts', 'collector.ts', 'worker.ts'];
const inTheBrowser = (file: string) =>
  room(file) === 'listening' && LISTENING_IN_THE_BROWSER.some((name) => file.endsWith(`/${name}`));

describe('the house', () => {
  it('has imports that go downward only', () => {
    const upward = imports.filter(({ file, path }) => {
      const [from, to] = [ROOMS.indexOf(room(file)), ROOMS.indexOf(room(path))];
      return from >= 0 && to >= 0 && to < from;
    });
    expect(upward).toEqual([]);
    expect(imports.length).toBeGreaterThan(100);
  });

  it('has no circles of files', () => {
    const circular = inCircles(imports.map(({ file, path }): Arrow => [file, path]));
    expect(circular).toEqual([]);
  });

  it('has no circles of folders among its screens', () => {
    const arrows = imports
      .map(({ file, path }): Arrow => [dirname(file), dirname(path)])
      .filter(([from, to]) => room(from) === 'app' && room(to) === 'app' && from !== to);
    expect(inCircles(arrows)).toEqual([]);
    expect(inCircles([...arrows, ['app', 'app/shell']])).toContain('app/shell');
  });

  it('has no import from one kind of card to another', () => {
    const kind = (path: string) => KIND_NAMES.find((name) => path.startsWith(`cards/${name}/`));
    const sideways = imports.filter(({ file, path }) => {
      const [from, to] = [kind(file), kind(path)];
      return from && to && from !== to;
    });
    expect(sideways).toEqual([]);
  });

  it('has rooms of rules without clock, chance or browser', () => {
    const touched = files
      .filter((file) => !inTheBrowser(file))
      .filter((file) => PURE.includes(room(file)) || /^cards\/.*\.ts$/.test(file))
      .filter((file) =>
        /Math\.random|Date\.now|new Date\(\)|performance\.now|\bwindow\.|\bdocument\.(?:get|query|create|add|body|hidden)|localStorage|indexedDB/.test(
          readFileSync(join('src', file), 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, ''),
        ),
      );
    expect(touched).toEqual([]);
  });
});
