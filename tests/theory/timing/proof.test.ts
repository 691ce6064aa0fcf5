import { describe, expect, it } from 'vitest';
import { judgedTaps } from '../../../src/theory/timing/judge.ts';
import { drawn, PANELS, seedsFrom, share, verdicts, type Wish } from './study.ts';

/** Nothing was chosen on these; `npm run bench` draws more of them. */
const SEEDS = seedsFrom(1_000_000, 250);

const bendTold = (place: number) => (judgement: ReturnType<typeof judgedTaps>) =>
  judgement.shape!.some((at) => at.place === place && at.told);

describe('simulated players, on seeds that nothing was chosen on', () => {
  it.each(PANELS)('are judged rightly on a panel of %f s', (panel) => {
    expect(verdicts(0.7, 0.1, SEEDS, { panel }).wrong).toBeLessThanOrEqual(1);
    expect(verdicts(1.5, 0.1, SEEDS, { panel }).right).toBeLessThanOrEqual(1);
    expect(verdicts(1, 0.1, SEEDS, { panel }).near).toBeGreaterThan(85);
  });

  it.each([0.1, 0.2, 0.3])(
    'are told which note bends where glass and sound are %f s late together',
    (lag) => {
      for (const tempo of [96, 144]) {
        const player = { spread: 0.05, bend: [0, -0.02], lag };
        const second = (judgement: ReturnType<typeof judgedTaps>) =>
          bendTold(2)(judgement) && !bendTold(3)(judgement);
        expect(share(SEEDS, { tempo, player }, second)).toBeGreaterThanOrEqual(97);
      }
    },
  );

  it('are told a bend of 20 ms, and none where there is none', () => {
    const wish = (bend: number[]): Wish => ({ player: { spread: 0.05, bend } });
    expect(share(SEEDS, wish([0, -0.02]), bendTold(2))).toBeGreaterThanOrEqual(97);
    expect(
      share(SEEDS, wish([]), ({ shape }) => shape!.some(({ told }) => told)),
    ).toBeLessThanOrEqual(1);
  });

  it('are told a drift of 2 %, and none where there is none', () => {
    const wish = (drift: number): Wish => ({ player: { spread: 0.04, drift } });
    const told = ({ drift }: ReturnType<typeof judgedTaps>) => drift!.told;
    expect(share(SEEDS, wish(0.02), told)).toBeGreaterThanOrEqual(99);
    expect(share(SEEDS, wish(0), told)).toBeLessThanOrEqual(0.5);
  });

  it.each(PANELS)('show the step of a panel of %f s by their taps', (panel) => {
    const seen = SEEDS.slice(0, 60).map((seed) => {
      const { taps, plan } = drawn(seed, { panel });
      return judgedTaps(taps, plan, { allowed: 0.1 }).panel;
    });
    const right = seen.filter((step) =>
      panel === 0 ? step === null : step !== null && Math.abs(step / panel - 1) < 0.01,
    );
    expect(right.length).toBeGreaterThanOrEqual(58);
  });
});
