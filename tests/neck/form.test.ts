import { expect, test } from 'vitest';
import { flawsOf, formOf } from '../../src/neck/form.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { parsePlace } from '../../src/neck/placeText.ts';
import type { Member } from '../../src/theory/chord.ts';

/** `5/3=1 4/2=3`: places from the lowest sounding up, each with its member. */
function line(text: string) {
  return text.split(' ').map((word) => {
    const [place = '', member] = word.split('=');
    return { ...parsePlace(place)!, member: Number(member) as Member };
  });
}

// Common practice.
test.each([
  ['5/3=1 4/2=3 3/0=5', 'stacked', 'C E G'],
  ['4/2=3 3/0=5 2/1=1', 'inversion', 'E G C'],
  ['5/3=1 3/0=5 2/5=3', 'spread', 'C G E'],
  ['5/3=1 4/2=3 3/0=5 2/0=7', 'stacked', 'C E G B'],
  [
    '4/2=3 3/0=5 2/0=7 2/1=1',
    'inversion',
    'E G B C: a seventh chord cannot be inverted without a second',
  ],
  ['5/3=1 3/0=5 2/0=7 1/0=3', 'spread', 'C G B E'],
  ['5/3=1 5/7=3 4/5=5 4/9=7 3/7=9', 'stacked', 'C E G B D'],
  ['5/3=1 5/5=9 4/2=3 3/0=5 2/0=7', 'cluster', 'C D E G B'],
] as const)('%s is %s: %s', (...[places, form]) => expect(formOf(GUITAR, line(places))).toBe(form));

test.each([
  ['5/3=1 4/2=3 4/5=5', [5, 4], 0, 'two notes on a string'],
  ['5/3=1 5/7=3 5/10=5', [5, 4], 3, 'three on one, a string left out, eight frets'],
  ['5/3=1 4/2=3 3/0=5', [5, 4, 3, 2], 0, 'no more strings than notes'],
  ['5/3=1 4/2=3 4/5=5', [5, 4, 3], 1, 'a string left out'],
  ['6/3=1 5/2=3 4/7=7', [6, 5, 4], 1, 'six frets'],
  ['6/3=1 5/4=3 4/7=7', [6, 5, 4], 0, 'five frets'],
  ['6/0=1 5/3=3 4/7=7', [6, 5, 4], 0, 'an open string and five frets'],
] as const)('%s on %j has %i flaws: %s', (...[places, strings, flaws]) =>
  expect(flawsOf(line(places), strings)).toBe(flaws),
);
