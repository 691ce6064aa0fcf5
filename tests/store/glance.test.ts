import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { hasLessons, noteLessons } from '../../src/store/glance.ts';

const kept = new Map<string, string>();

beforeEach(() => {
  kept.clear();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

it('the page sees at a glance whether there are lessons, and no more once the last one is gone', () => {
  expect(hasLessons()).toBe(false);
  noteLessons(true);
  expect([hasLessons(), [...kept.keys()]]).toEqual([true, ['skipwise']]);
  noteLessons(false);
  expect(hasLessons()).toBe(false);
});

it('the page begins as at a first visit where that is refused', () => {
  const refuse = () => {
    throw new DOMException('refused');
  };
  vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse, removeItem: refuse });
  expect(hasLessons()).toBe(false);
  noteLessons(true);
  noteLessons(false);
  expect(hasLessons()).toBe(false);
});
