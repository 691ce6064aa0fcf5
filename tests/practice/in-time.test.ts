import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { inTime } from '../../src/practice/inTime.ts';
import { deckIn } from '../cards/decks.ts';
import { reviewOf } from '../memory/reviews.ts';

const NOW = Date.UTC(2026, 10, 28);
const WEEK = 7 * 86_400_000;
const items = itemsOf(deckIn('Bb major'));
const id = (figure: string, tempo: number, clicks = 'beat') =>
  `pulse:Bb major:1:triad:guitar:${figure}:${tempo}:${clicks}`;

describe('how fast figures were kept even', () => {
  it('is the fastest that was right, whatever the click, and week by week', () => {
    const reviews = [
      reviewOf({ n: 1, item: id('triplets', 60), right: true, at: NOW - 2 * WEEK - 1 }),
      reviewOf({ n: 2, item: id('triplets', 80), right: false, at: NOW - WEEK - 1 }),
      reviewOf({ n: 3, item: id('triplets', 80, 'gone'), right: true, at: NOW - 5 }),
      reviewOf({ n: 4, item: 'spot:Bb major:1:triad:guitar:5-4:1-8', right: true, at: NOW }),
    ];
    const [triplets, eighths, ...more] = inTime(items, reviews, NOW);
    expect(more).toEqual([]);
    expect(triplets!.item.id).toBe(id('triplets', 60));
    expect(triplets!.highest).toEqual({ tempo: 80, at: NOW - 5 });
    expect(triplets!.weeks).toEqual([null, null, null, null, null, 60, null, 80]);
    expect(eighths).toMatchObject({ highest: null });
  });

  it('is nothing where no figure is asked', () => {
    expect(
      inTime(
        items.filter(({ kind }) => kind === 'spot'),
        [],
        NOW,
      ),
    ).toEqual([]);
  });
});
