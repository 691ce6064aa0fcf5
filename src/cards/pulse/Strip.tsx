import type { TimeJudgement } from '../../theory/timing/judge.ts';
import type { TimePlan } from '../../theory/timing/plan.ts';
import { stripTaps } from './byPlace.ts';

/** In units of the drawing: a beat's width, a bar's height, what is left free at either end. */
const BEAT = 72;
const ROW = 26;
const EDGE = 14;

/** The taps against the grid, a row for each bar: where they fall, whatever all of them have in common left out. */
export function Strip({ plan, judgement }: { plan: TimePlan; judgement: TimeJudgement }) {
  const { figure, slots } = plan;
  const bars = Math.ceil(figure.length.n / figure.length.d / figure.bar);
  const row = bars > 6 ? ROW / 2 : ROW;
  const taps = stripTaps(judgement, plan);
  const [width, height] = [figure.bar * BEAT + EDGE * 2, bars * row];
  const x = (beat: number) => EDGE + beat * BEAT;
  return (
    <svg
      class="tap-strip"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Your taps against the grid, ${bars} bars of ${figure.bar}`}
    >
      {slots.map(({ at }, i) => {
        const beat = at.n / at.d;
        const bar = Math.floor(beat / figure.bar + 1e-6);
        return (
          <path
            key={i}
            class={at.d === 1 ? 'grid beat' : 'grid'}
            d={`M${x(beat - bar * figure.bar)} ${bar * row + 1}v${row - 2}`}
          />
        );
      })}
      {taps.map(({ bar, beat, worst }, i) => {
        const [cx, cy] = [x(beat), (bar + 0.5) * row];
        return (
          <g key={i}>
            <circle class="tapped" cx={cx} cy={cy} r={row / 6} />
            {worst && <circle class="worst" cx={cx} cy={cy} r={row / 3} />}
          </g>
        );
      })}
    </svg>
  );
}
