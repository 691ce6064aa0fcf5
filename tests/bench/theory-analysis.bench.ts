import { bench, describe } from 'vitest';
import { analyse } from '../../src/theory/analysis/analysis.ts';
import data from '../theory/data/phrases.json';
import { read, type Written } from '../theory/analysis-phrases.ts';
import { drawPhrase } from '../theory/analysis-random.ts';
import { figures, score } from '../theory/analysis-score.ts';

const tuned = (data.tuned as Written[]).map(read);
const heldOut = (data.heldOut as Written[]).map(read);
const others = [...data.later, ...data.open].map((written) => read(written as Written));
const unseen = [...data.sealed, ...data.apart].map((written) => read(written as Written));
const random = Array.from({ length: 500 }, (_, i) => drawPhrase(1_000_000 + i));

console.log(`Analysis, in percent:
  written down       ${figures(score([...tuned, ...heldOut, ...others]))}
  never tuned on     ${figures(score(unseen))}
  500 random         ${figures(score(random))}
  bar line unknown   ${figures(score([...tuned, ...heldOut], { pickup: null }))}`);

const notes = heldOut.reduce((sum, { phrase }) => sum + phrase.notes.length, 0);

describe(`analysis of ${notes} notes`, () => {
  bench('bar line known', () => {
    for (const { phrase, key, bar, pickup } of heldOut) analyse(phrase, key, { bar, pickup });
  });
  bench('bar line unknown', () => {
    for (const { phrase, key, bar } of heldOut) analyse(phrase, key, { bar, pickup: null });
  });
});
