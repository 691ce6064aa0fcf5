import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { KIND_NAMES } from '../src/decks/kinds.ts';

/** From top to bottom: a room may import from those below it. */
const ROOMS = [
  'app',
  'cards',
  'parts',
  'practice',
  'memory',
  'decks',
  'sound',
  'neck',
  'theory',
  'store',
];
const PURE = ['practice', 'memory', 'decks', 'neck', 'theory'];

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

describe('the house', () => {
  it('has imports that go downward only', () => {
    const upward = imports.filter(({ file, path }) => {
      const [from, to] = [ROOMS.indexOf(room(file)), ROOMS.indexOf(room(path))];
      return from >= 0 && to >= 0 && to < from;
    });
    expect(upward).toEqual([]);
    expect(imports.length).toBeGreaterThan(100);
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
      .filter((file) => PURE.includes(room(file)) || /^cards\/.*\.ts$/.test(file))
      .filter((file) =>
        /Math\.random|Date\.now|new Date\(\)|performance\.now|\bwindow\.|\bdocument\.(?:get|query|create|add|body|hidden)|localStorage|indexedDB/.test(
          readFileSync(join('src', file), 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, ''),
        ),
      );
    expect(touched).toEqual([]);
  });
});
