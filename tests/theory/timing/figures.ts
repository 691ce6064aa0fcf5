import type { TimeJudgement } from '../../../src/theory/timing/judge.ts';
import { PANELS, seedsFrom, share, verdicts, type Wish } from './study.ts';

const shown = (x: number) => x.toFixed(1).padStart(5);
const placeTold = (place: number) => (judgement: TimeJudgement) =>
  judgement.shape!.some((at) => at.place === place && at.told);
const anyTold = ({ shape }: TimeJudgement) => shape!.some(({ told }) => told);
const drifted = ({ drift }: TimeJudgement) => drift!.told;

/** How the judge of times does on simulated players, in percent, from so many seeds a row. */
export function figures(first: number, count: number): string {
  const seeds = seedsFrom(first, count);
  const rows = [0.1, 0.06].flatMap((bar) =>
    PANELS.map((panel) => {
      const cells = [0.5, 0.7, 1, 1.5, 2].map((times) => {
        const { right, near, wrong } = verdicts(times, bar, seeds, { panel });
        return [right, near, wrong].map(shown).join('/');
      });
      return `  bar ${bar}, panel ${panel.toFixed(4)} s  ${cells.join('  ')}`;
    }),
  );
  const told = [0.03, 0.05, 0.07, 0.1].map((spread) => {
    const bent = (...bend: number[]): Wish => ({ player: { spread, bend } });
    const gone = (drift: number): Wish => ({ player: { spread, drift } });
    return `  spread ${spread}  bend 20 ms ${shown(share(seeds, bent(0, -0.02), placeTold(2)))}  none ${shown(share(seeds, bent(), anyTold))}  drift 2 % ${shown(share(seeds, gone(0.02), drifted))}  none ${shown(share(seeds, gone(0), drifted))}`;
  });
  return ['Right/near/wrong at .5, .7, 1, 1.5 and 2 of the bar:', ...rows, 'Told:', ...told].join(
    '\n',
  );
}
