/**
 * Whether a card can be answered without hearing it: simple ways to guess from what is offered, over 3,000 cards of
 * each size. A quarter is chance.
 */
import { describe, expect, it } from 'vitest';
import { trace } from '../../src/cards/trace/index.ts';
import type { TraceCard } from '../../src/cards/trace/ask.ts';
import { SIZES } from '../../src/theory/chord.ts';
import { order } from '../../src/cards/order/index.ts';
import type { Card, Kind } from '../../src/cards/kind.ts';
import type { Item } from '../../src/practice/item.ts';
import { echo } from '../../src/cards/echo/index.ts';
import { fill } from '../../src/cards/fill/index.ts';
import { follow } from '../../src/cards/follow/index.ts';
import { outline } from '../../src/cards/outline/index.ts';
import { play } from '../../src/cards/play/index.ts';
import { vary } from '../../src/cards/vary/index.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { drawPhrase } from '../theory/analysis-random.ts';
import { deckIn } from './decks.ts';
import { phraseDeck } from './phrases.ts';
import { itemIn, itemsIn } from './items.ts';

const CARDS = 3000;

/** The share of cards that a way of guessing gets right, by the score it gives each option; ties are drawn. */
function guessed<C>(cards: readonly C[], scores: (card: C) => readonly Option[]): number {
  const shares = cards.map((card) => {
    const options = scores(card);
    const most = Math.max(...options.map(({ score }) => score));
    const best = options.filter(({ score }) => score > most - 1e-9);
    return best.filter(({ right }) => right).length / best.length;
  });
  return shares.reduce((sum, share) => sum + share, 0) / cards.length;
}

interface Option {
  readonly right: boolean;
  readonly score: number;
}

const turns = (heights: readonly number[]) =>
  heights
    .slice(1)
    .map((height, i) => Math.sign(height - heights[i]!))
    .join();

const alike = (a: readonly number[], b: readonly number[]) =>
  a.filter((height, i) => height === b[i]).length;
const apart = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, height, i) => sum + Math.abs(height - (b[i] ?? height)), 0);

type Lines = readonly (readonly number[])[];
const WAYS = {
  'the one most like the others': (lines: Lines, k: number) =>
    lines.reduce((sum, line) => sum + alike(line, lines[k]!), 0),
  'the one nearest to the others': (lines: Lines, k: number) =>
    -lines.reduce((sum, line) => sum + apart(line, lines[k]!), 0),
  'the odd one': (lines: Lines, k: number) =>
    lines.reduce((sum, line) => sum + apart(line, lines[k]!), 0),
  'the first note': (lines: Lines, k: number, right: readonly number[]) =>
    lines[k]![0] === right[0] ? 1 : 0,
  'the ups and downs': (lines: Lines, k: number, right: readonly number[]) =>
    turns(lines[k]!) === turns(right) ? 1 : 0,
  'the one that moves least': (lines: Lines, k: number) =>
    -lines[k]!.slice(1).reduce((sum, height, i) => sum + Math.abs(height - lines[k]![i]!), 0),
} as const;

/** What is offered, as rows of notes, and which of them is right. */
interface Offer {
  readonly lines: Lines;
  readonly right: number;
}

/** The share that each way of guessing gets right. */
function study(offers: readonly Offer[]) {
  const share = (way: keyof typeof WAYS) =>
    guessed(offers, ({ lines, right }) =>
      lines.map((_, k) => ({ right: k === right, score: WAYS[way](lines, k, lines[right]!) })),
    );
  return {
    alike: share('the one most like the others'),
    nearest: share('the one nearest to the others'),
    odd: share('the odd one'),
    first: share('the first note'),
    turns: share('the ups and downs'),
    least: share('the one that moves least'),
  };
}

/** By what is offered alone nothing is told: neither the common ancestor of the others nor the odd one is right. */
function expectEven(share: ReturnType<typeof study>) {
  expect(share.alike).toBeLessThanOrEqual(0.32);
  expect(share.nearest).toBeLessThanOrEqual(0.32);
  expect(share.odd).toBeLessThanOrEqual(0.32);
}

const traced = ({ choices, path }: TraceCard): Offer => ({
  lines: choices.map(({ heights }) => heights),
  right: choices.findIndex((choice) => choice.path === path),
});

const midis = (notes: readonly { midi: number }[]) => notes.map(({ midi }) => midi);

describe.each(SIZES)('a traced %s', (size) => {
  const items = ['Bb major', 'G minor', 'D dorian'].flatMap((key) =>
    itemsIn(trace, deckIn(key, [size])),
  );
  const both = [...items, ...items.map(({ id }) => itemIn(trace, `${id}:eighths`)!)];
  it.each(['far', 'near'])(
    'is not told by looking at paths that are %s',
    (range) => {
      const odd = range === 'near' ? 1 : 0;
      const cards = Array.from({ length: CARDS }, (_, k) =>
        trace.ask(both[k % both.length]!, 2 * (k * 7919 + 13) + odd),
      );
      const share = study(cards.map(traced));
      expectEven(share);
      expect(share.first).toBeLessThanOrEqual(0.4);
      expect(share.turns).toBeLessThanOrEqual(0.45);
      // Of far sevenths a line of one arpeggio moves least: a quarter of it is left.
      expect(share.least).toBeLessThanOrEqual(0.5);
    },
    120_000,
  );
});

/** The deck that these kinds are tried with elsewhere, and decks of phrases in many keys that were drawn. */
const DECKS = [
  phraseDeck(),
  ...Array.from({ length: 12 }, (_, i) => {
    const { key, phrase } = drawPhrase(610_000 + i);
    const drills = kindsOf('phrase').map((kind) => ({ kind }));
    return { ...phraseDeck(), key, drills, phrases: [phrase] };
  }),
];

/**
 * What a variation or an order is, are its ups and downs: who hears these has heard it, so there is no bar for them.
 */
describe.each([
  ['far', 0],
  ['near', 1],
])('drills of a phrase, on seeds whose wrong answers are %s,', (_range, odd) => {
  const cardsOf = <I extends Item, C extends Card<I>>(kind: Kind<I, C>) => {
    const items = DECKS.flatMap((deck) => itemsIn(kind, deck));
    return Array.from({ length: CARDS }, (_, k) =>
      kind.ask(items[k % items.length]!, 2 * (k * 7919 + 13) + odd),
    );
  };

  // Each variation is found by analysing its phrase: most of the time of this file.
  it('offer variations that are not told by looking, nor by their first note', () => {
    const share = study(
      cardsOf(vary).map(({ choices, right }) => ({
        lines: choices.map(({ phrase }) => midis(phrase.notes)),
        right: choices.indexOf(right),
      })),
    );
    expectEven(share);
    expect(share.first).toBeLessThanOrEqual(0.4);
    expect(share.least).toBeLessThanOrEqual(0.32);
  }, 120_000);

  it('offer orders that are not told by looking, nor by their first note', () => {
    const share = study(
      cardsOf(order).map(({ choices, right, excerpt }) => ({
        lines: choices.map(({ groups }) =>
          groups.flatMap(({ from, to }) => midis(excerpt.notes.slice(from, to))),
        ),
        right: choices.indexOf(right),
      })),
    );
    expectEven(share);
    expect(share.first).toBeLessThanOrEqual(0.4);
  }, 120_000);
});

/** Nothing that is offered tells anything where all seven degrees are, always, or the answer is made. */
describe('a card that offers no choice of its own', () => {
  const answersOf = <I extends Item, C extends Card<I>>(kind: Kind<I, C>) =>
    DECKS.flatMap((deck) => itemsIn(kind, deck)).map((item, seed) =>
      kind.answers(kind.ask(item, seed)),
    );
  it.each([outline, fill])('has all seven degrees: $name', (kind: Kind) => {
    for (const offered of answersOf(kind)) expect(offered).toEqual('1234567'.split(''));
  });
  it.each([follow, echo, play])('has none: $name', (kind: Kind) => {
    for (const offered of answersOf(kind)) expect(offered).toBeNull();
  });
});
