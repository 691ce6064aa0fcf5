import { describe, expect, it } from 'vitest';
import { spot } from '../../src/cards/spot/index.ts';
import { deckIn } from './decks.ts';
import { itemIn, itemsIn } from './items.ts';

describe('spot', () => {
  it('says what the chord shares with the one it was taken for, and what tells them apart', () => {
    const card = spot.ask(itemIn(spot, 'spot:Bb major:2:triad:guitar:5-4:1-7')!, 3);
    const verdict = spot.judge(card, '4');
    expect(verdict).toEqual({ right: false, takenFor: '4' });
    const why = spot.explain(card, verdict, '4', 'english');
    expect(why.title).toBe('ii, not IV');
    expect(why.sentence).toBe('Cm stands on the second degree.');
    expect(why.detail).toBe('C E♭ G. It shares E♭ and G with IV; C tells them apart.');
    expect(why.otherSound).not.toBeNull();
  });

  it('says of an arpeggio with the same notes that the root tells them apart', () => {
    const [item] = itemsIn(spot, deckIn('Bb major', ['thirteenth'], [[5, 4, 3, 2]])).filter(
      ({ degree }) => degree === 1,
    );
    const why = spot.explain(spot.ask(item!, 1), { right: false, takenFor: '6' }, '6', 'english');
    expect(why.detail).toBe(
      'B♭ D F A C E♭ G. vi11♭13 has the same notes; only the root tells them apart.',
    );
  });

  it('names notes as the player reads them', () => {
    const card = spot.ask(itemIn(spot, 'spot:Bb major:1:triad:guitar:5-4:1-7')!, 3);
    const why = spot.explain(card, { right: true, takenFor: null }, '1', 'german');
    expect(why.detail).toBe('B D F.');
  });

  it('shows the root only where other degrees hold the same notes', () => {
    const strings = [[5, 4, 3, 2]];
    const shown = (size: 'thirteenth' | 'eleventh') =>
      itemsIn(spot, deckIn('Bb major', [size], strings)).map((item) => spot.ask(item, 1).rootShown);
    expect(new Set(shown('thirteenth'))).toEqual(new Set([true]));
    expect(new Set(shown('eleventh'))).toEqual(new Set([false]));
  });
});

it('shapes come as often as their form is: of a seventh chord most in root position, few inverted or spread', () => {
  const item = itemIn(spot, 'spot:Bb major:2:seventh:guitar:4-3-2-1:1-6')!;
  const counts: Record<string, number> = {};
  for (let seed = 0; seed < 600; seed++) {
    const { form } = spot.ask(item, seed).shape;
    counts[form] = (counts[form] ?? 0) + 1;
  }
  // A form's weight is 60, 6 or 3, and less with flaws.
  expect(counts['stacked']).toBeGreaterThan(400);
  expect(counts['inversion']).toBeGreaterThan(20);
  expect(counts['inversion']).toBeLessThan(120);
  expect(counts['spread']).toBeLessThan(150);
});

it('a shape with a flaw comes three times in ten for one without', () => {
  const item = itemIn(spot, 'spot:Bb major:3:triad:guitar:5-4-3:1-8')!;
  const counts = new Map<string, number>();
  for (let seed = 0; seed < 600; seed++) {
    const { form, flaws } = spot.ask(item, seed).shape;
    counts.set(`${form} ${flaws}`, (counts.get(`${form} ${flaws}`) ?? 0) + 1);
  }
  const [plain, flawed] = [counts.get('stacked 0')!, counts.get('stacked 1')!];
  expect(flawed / plain).toBeGreaterThan(0.2);
  expect(flawed / plain).toBeLessThan(0.4);
});
