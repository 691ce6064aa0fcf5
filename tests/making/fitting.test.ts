import { describe, expect, it } from 'vitest';
import type { KindName } from '../../src/decks/deck.ts';
import { PLAIN_DRAFT, type Draft } from '../../src/making/draft.ts';
import { nothingIn, withPhrase } from '../../src/making/fitting.ts';
import { phraseDeck, STAIRS } from '../cards/phrases.ts';
import { draftOf } from '../../src/making/fromDeck.ts';

const { phrases } = draftOf(phraseDeck({ phrases: [STAIRS] }));
const stairs = phrases[0]!;
const made: Draft = {
  ...draftOf(phraseDeck({ phrases: [STAIRS] })),
  phrases: [],
  drills: ['spot'],
};

const nothingOf = (kind: KindName, of: Draft) => nothingIn(of)(kind);

describe('kinds of card that fit a lesson', () => {
  it('say why they would ask nothing', () => {
    expect(nothingOf('spot', PLAIN_DRAFT)).toBeNull();
    expect(nothingOf('outline', PLAIN_DRAFT)).toBe('add a phrase first');
    expect(nothingOf('place', { ...PLAIN_DRAFT, strings: [] })).toBe(
      'choose at least one string set',
    );
    const narrow: Draft = { ...PLAIN_DRAFT, sizes: ['ninth'], strings: [[6, 5]], frets: [0, 2] };
    expect(nothingOf('spot', narrow)).toMatch(/lies whole on these strings/);
    const one = { ...stairs.phrase, notes: stairs.phrase.notes.slice(0, 1) };
    expect(nothingOf('order', { ...made, phrases: [{ phrase: one, rulings: [] }] })).toMatch(
      /too few arpeggios/,
    );
  });

  it('are switched on by the phrase that they fit, and by no other', () => {
    const first = withPhrase(made, stairs);
    expect(first.drills).toContain('outline');
    expect(first.drills).toContain('follow');
    expect(first.drills.filter((kind) => kind === 'spot')).toHaveLength(1);
    // What the teacher then switches off stays off.
    const off = { ...made, ...first, drills: ['spot'] as const };
    expect(withPhrase(off, stairs).drills).toEqual(['spot']);
  });

  it('go on with their phrases where one comes in between', () => {
    const two: Draft = {
      ...made,
      phrases: [stairs, stairs],
      drills: [{ kind: 'fill', phrases: [2] }],
    };
    const other = { ...stairs, phrase: { ...stairs.phrase, tempo: 63 } };
    const tempos = (at?: number) =>
      withPhrase(two, other, at).phrases.map(({ phrase }) => phrase.tempo);
    const { tempo } = stairs.phrase;
    expect([tempos(), tempos(0)]).toEqual([
      [tempo, tempo, 63],
      [63, tempo, tempo],
    ]);
    expect(withPhrase(two, other).drills).toEqual(two.drills);
    const { phrases: all, drills } = withPhrase(two, stairs, 1);
    expect(all).toHaveLength(3);
    expect(drills).toEqual([{ kind: 'fill', phrases: [3] }]);
  });
});
