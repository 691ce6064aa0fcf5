import { describe, expect, it } from 'vitest';
import { beats } from '../../src/theory/rhythm.ts';
import { read, type Written } from '../theory/analysis-phrases.ts';
import { drawPhrase } from '../theory/analysis-random.ts';
import { figures, score } from '../theory/analysis-score.ts';
import data from './data/phrases.json';

const tuned = (data.tuned as Written[]).map(read);
const heldOut = (data.heldOut as Written[]).map(read);
const later = (data.later as Written[]).map(read);
/** Seeds far from 1 to 300 and 5001 to 5200, which were looked at while the weights were chosen. */
const random = Array.from({ length: 500 }, (_, i) => drawPhrase(1_000_000 + i));

describe('phrases of our own, written down with their truth', () => {
  it('are at least forty, half of them held out, in many keys', () => {
    expect(tuned.length + heldOut.length).toBeGreaterThanOrEqual(40);
    expect(heldOut.length).toBeGreaterThanOrEqual(tuned.length);
    const keys = [...tuned, ...heldOut].map(({ key }) => `${key.tonic} ${key.scale}`);
    expect(new Set(keys).size).toBeGreaterThan(20);
  });

  it('are told truly: what is not marked belongs to the chord, what is marked does not', () => {
    const faults = [...tuned, ...heldOut, ...later, ...random].filter(
      ({ phrase, groups, embellishments }) =>
        groups.some(({ from, to, chord }) =>
          phrase.notes
            .slice(from, to)
            .some(
              ({ name }, i) => chord.notes.includes(name) === (embellishments[from + i] !== null),
            ),
        ),
    );
    expect(faults.map(({ name }) => name)).toEqual([]);
  });

  // Floors just below what the first run on them gave; the weights have not been touched since. The goals are 98, 98, 96
  // and 95: all but the last are still to be reached.
  it('are read mostly right where they were held out', () => {
    const got = score(heldOut);
    console.log(`held out: ${figures(got)}`);
    expect(got.spans).toBeGreaterThanOrEqual(92);
    expect(got.degree).toBeGreaterThanOrEqual(97);
    expect(got.degreeAndSize).toBeGreaterThanOrEqual(90);
    expect(got.f1).toBeGreaterThanOrEqual(95);
  });

  // Floors just below what the first run on them gave: harder than the others, and further from the goals.
  it('are read less well where they were written later', () => {
    const got = score(later);
    console.log(`later: ${figures(got)}`);
    expect(got.spans).toBeGreaterThanOrEqual(87);
    expect(got.degree).toBeGreaterThanOrEqual(94);
    expect(got.degreeAndSize).toBeGreaterThanOrEqual(90);
    expect(got.f1).toBeGreaterThanOrEqual(93);
  });

  it('are read as well where they were looked at', () => {
    const got = score(tuned);
    console.log(`looked at: ${figures(got)}`);
    expect(got.spans).toBeGreaterThanOrEqual(94);
    expect(got.degreeAndSize).toBeGreaterThanOrEqual(95);
  });

  it('are still cut mostly right where nobody knows the bar line', () => {
    const got = score([...tuned, ...heldOut], { pickup: null });
    console.log(`bar line unknown: ${figures(got)}`);
    expect(got.spans).toBeGreaterThanOrEqual(88);
  });
});

describe('500 phrases drawn from unseen seeds', () => {
  it(
    'are read right by far the most of the time, and what is sure is so with reason',
    { timeout: 60_000 },
    () => {
      const got = score(random);
      console.log(`random: ${figures(got)}`);
      expect(got.spans).toBeGreaterThanOrEqual(95);
      expect(got.degree).toBeGreaterThanOrEqual(95);
      expect(got.degreeAndSize).toBeGreaterThanOrEqual(93);
      expect(got.f1).toBeGreaterThanOrEqual(86);
      expect(got.sureAndRight).toBeGreaterThanOrEqual(94);
    },
  );

  it(
    'are hurt by a bar line one beat off, and mostly healed where it is said to be unknown',
    { timeout: 60_000 },
    () => {
      const some = random.slice(0, 60);
      const wrong = score(some, { pickup: beats(1) });
      const unknown = score(
        some.map((told) => ({ ...told, pickup: beats(1) })),
        { pickup: null },
      );
      console.log(`bar line off: ${figures(wrong)}\nunknown: ${figures(unknown)}`);
      expect(unknown.spans).toBeGreaterThan(wrong.spans + 10);
    },
  );
});
