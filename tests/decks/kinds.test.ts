/** What links, logs and reports that are kept by users rest on: it does not change. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PHRASE_SINCE, SHAPES_SINCE } from '../../src/decks/version.ts';
import {
  guessOf,
  isConfusing,
  KIND_NAMES,
  kindOfLetter,
  letterOf,
  sinceOf,
} from '../../src/decks/kinds.ts';
import { drillOf, PLAIN_DRAFT } from '../../src/making/draft.ts';

// Letter in links, the version of the document that has it first, answers to guess among, whether one is taken for another.
const KINDS = [
  ['spot', 's', 1, 7, true],
  ['place', 'p', 1, 0, true],
  ['trace', 't', 1, 4, true],
  ['outline', 'o', 1, 7, true],
  ['follow', 'f', 1, 0, true],
  ['order', 'r', 1, 4, false],
  ['vary', 'v', 1, 4, false],
  ['fill', 'l', 1, 7, false],
  ['play', 'y', 2, 0, false],
  ['echo', 'e', 2, 0, false],
  ['pulse', 'u', 2, 0, false],
] as const;

describe('the kinds of card', () => {
  it('stand in this order, in which reports tell their paces; what is new comes behind', () => {
    expect(KIND_NAMES, 'a row of each in KINDS above').toEqual(KINDS.map(([name]) => name));
  });

  it('have a letter each', () => {
    for (const name of KIND_NAMES) {
      expect(letterOf(name)).toMatch(/^[a-z]$/);
      expect(kindOfLetter(letterOf(name)), letterOf(name)).toBe(name);
    }
  });

  it.each(KINDS)(
    '%s is written %s since version %i, with %i answers offered',
    (name, letter, since, offered, confuses) => {
      expect(letterOf(name)).toBe(letter);
      expect(kindOfLetter(letter)).toBe(name);
      expect(sinceOf(name)).toBe(since);
      expect(guessOf(name)).toBe(offered === 0 ? 0 : 1 / offered);
      expect(isConfusing(name)).toBe(confuses);
    },
  );

  it('came with versions of the document that had nothing else new', () => {
    for (const name of KIND_NAMES)
      expect([PHRASE_SINCE, SHAPES_SINCE]).not.toContain(sinceOf(name));
  });

  it('are told to those who write lessons by hand', () => {
    const rows = readFileSync('drills/README.md', 'utf8').split('\n');
    const row = (word: string) => rows.find((each) => each.startsWith(`| \`${word}\` `));
    for (const name of KIND_NAMES) {
      expect(row(name), 'a row for it').toBeDefined();
      if (sinceOf(name) > 1) expect(row('version')).toContain(`\`${name}\``);
      const { kind: _, ...words } = drillOf(name, PLAIN_DRAFT);
      for (const word of Object.keys(words)) expect(row(word), word).toContain(`\`${name}\``);
    }
  });

  it('that there are not are guessed by nobody', () => {
    expect([guessOf('other'), guessOf('constructor')]).toEqual([0, 0]);
    expect(kindOfLetter('z')).toBeUndefined();
  });
});
