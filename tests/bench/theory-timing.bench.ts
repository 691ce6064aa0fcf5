import { bench, describe } from 'vitest';
import { judgedTaps } from '../../src/theory/timing/judge.ts';
import { drawn } from '../theory/timing/study.ts';
import { figures } from '../theory/timing/figures.ts';

/** Nothing was chosen on these seeds. */
console.log(figures(2_000_000, 400));

const { taps, plan } = drawn(3);

describe('48 taps', () => {
  bench('judged', () => void judgedTaps(taps, plan, { allowed: 0.1 }));
});
