import { Stair, type Step } from './Stair.tsx';
import './StairHops.css';

/** A hop from one step of the stair to another, by their degrees. */
interface StairHop {
  readonly from: number;
  readonly to: number;
  /** How often, as a share of the most frequent hop: how thick it is drawn. */
  readonly share: number;
}

interface StairHopsProps {
  steps: readonly Step[];
  hops: readonly StairHop[];
  /** The hop drawn above all others, by its place among them. */
  lit: number | null;
  /** What a screen reader calls it. */
  label: string;
}

/** Rem: the height of the lowest and the highest step, and the room for hops above that. As in the styles. */
const [LOW, HIGH, ABOVE] = [2.5, 5, 3];

/** Where on a step, as a part of its width. */
const [LEAVES, ARRIVES] = [0.27, 0.73];

/** The staircase, and hops from step to step over it: from a ring to a dot. */
export function StairHops({ steps, hops, lit, label }: StairHopsProps) {
  // A hop leaves at the left of a step and arrives at its right: ring and dot do not hide each other.
  const spot = (degree: number, across: number) => {
    const index = steps.findIndex((step) => step.degree === degree);
    const height = LOW + ((HIGH - LOW) * index) / Math.max(1, steps.length - 1);
    return { x: (100 * (index + across)) / steps.length, y: HIGH + ABOVE - height - 0.5 };
  };
  return (
    <div class="stair-hops">
      <Stair steps={steps} label={label} />
      <svg viewBox={`0 0 100 ${HIGH + ABOVE}`} preserveAspectRatio="none" aria-hidden="true">
        {hops.map(({ from, to, share }, index) => {
          // Hops one way and back bend at different heights, so that neither hides the other.
          const [a, b] = [spot(from, LEAVES), spot(to, ARRIVES)];
          const top = Math.max(-1.5, Math.min(a.y, b.y) - (to > from ? 3.5 : 2));
          return (
            <path
              key={`${from} ${to}`}
              class={lit !== null && lit !== index ? 'pale' : ''}
              d={`M${a.x} ${a.y}Q${(a.x + b.x) / 2} ${top} ${b.x} ${b.y}`}
              stroke-width={1.5 + 2.5 * share}
            />
          );
        })}
      </svg>
      {hops.map(({ from, to }, index) => {
        const pale = lit !== null && lit !== index ? 'pale' : '';
        const at = ({ x, y }: ReturnType<typeof spot>) => ({ left: `${x}%`, top: `${y}rem` });
        return (
          <span key={`${from} ${to}`}>
            <span class={`hop-end from ${pale}`} style={at(spot(from, LEAVES))} />
            <span class={`hop-end ${pale}`} style={at(spot(to, ARRIVES))} />
          </span>
        );
      })}
    </div>
  );
}
