/** The sentence that a lesson in the making is, part by part; and the lengths of a round. */
import { beforeAll, describe, expect, it } from 'vitest';
import { hasChords, partWords } from '../../src/app/teach/sentenceWords.ts';
import { lengthsOf } from '../../src/app/today/lengths.ts';
import { PLAIN_DRAFT, type Draft } from '../../src/making/draft.ts';
import { parseKey } from '../../src/theory/key.ts';
import { beats } from '../../src/theory/rhythm.ts';

beforeAll(() => import('../../src/cards/index.ts'));

const NOW = new Date(2026, 10, 28, 15).getTime();
const said = (part: Parameters<typeof partWords>[0], change: Partial<Draft> = {}) =>
  partWords(part, { ...PLAIN_DRAFT, ...change }, 'english', NOW);
const phrase = {
  phrase: { tempo: 72, notes: [{ midi: 58, name: 'Bb', at: beats(0), length: beats(1) }] },
  rulings: [],
};

describe('a lesson in the making as a sentence', () => {
  it('says which chords', () => {
    expect(said('chords')).toBe('Triads');
    expect(said('chords', { degrees: [2, 5] })).toBe('Triads ii and V');
    expect(said('chords', { degrees: [7, 1], sizes: ['seventh', 'triad'] })).toBe(
      'Sevenths and triads viiø7 and Imaj7',
    );
    expect(said('chords', { degrees: [] })).toBe('No chords');
    expect(said('chords', { sizes: [] })).toBe('No chords');
    expect(said('chords', { degrees: [2], key: parseKey('G minor pentatonic')! })).toBe(
      'Triads ii°',
    );
  });

  it('says in which key, on which strings and frets', () => {
    expect(said('key')).toBe('B♭ major');
    expect(partWords('key', PLAIN_DRAFT, 'german', NOW)).toBe('B major');
    expect(said('strings')).toBe('5–4 and 4–3');
    expect(said('strings', { strings: [[6, 5, 4, 3]] })).toBe('6–5–4–3');
    expect(said('strings', { strings: [] })).toBe('no strings');
    expect(said('frets', { frets: [3, 12] })).toBe('3–12');
  });

  it('says by which cards, the first four by name', () => {
    expect(said('cards')).toBe('see, place, hear');
    expect(said('cards', { drills: [] })).toBe('no cards');
    expect(said('cards', { drills: ['spot', 'place', 'trace', 'play', 'echo', 'pulse'] })).toBe(
      'see, place, hear, play and 2 more',
    );
    expect(said('cards', { drills: ['echo', 'pulse', 'play', 'spot', 'place'] })).toBe(
      'play back, keep time, play, see and 1 more',
    );
    const drills = ['outline', 'follow', 'order', 'vary'] as const;
    expect(said('cards', { drills })).toBe('no cards');
    expect(said('cards', { drills, phrases: [phrase] })).toBe(
      'name in a phrase, place the next, hear the order, hear the variation',
    );
    expect(said('cards', { drills: ['fill'], phrases: [phrase] })).toBe('hear what is missing');
  });

  it.each([
    [null, 'not set'],
    ['2026-11-28', 'today'],
    ['2026-11-29', 'tomorrow'],
    ['2026-11-27', 'yesterday'],
    ['2026-12-05', 'in 7 days'],
    ['2026-11-25', '3 days ago'],
  ])('on %s the day is %s', (lessonDay, words) => expect(said('day', { lessonDay })).toBe(words));

  it('has chords where a card asks for one', () => {
    expect(hasChords({ drills: [] })).toBe(true);
    expect(hasChords({ drills: ['fill', 'pulse'] })).toBe(false);
    expect(hasChords({ drills: ['fill', 'spot'] })).toBe(true);
  });
});

it('a round is as long as one likes, goes on where one is open, or lasts until it is enough', () => {
  const minutes = [3, 4, 5, 6, 7, 8, 10, 12, 15, 20];
  expect(lengthsOf(false)).toEqual([...minutes, 'enough']);
  expect(lengthsOf(true)).toEqual(['go on', ...minutes, 'enough']);
});
