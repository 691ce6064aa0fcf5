import './BarChart.css';
import { Unbroken } from './Written.tsx';

/** One bar: how full it is, 0 to 1, and the figure that says so. */
interface Bar {
  readonly name: string;
  readonly filled: number;
  readonly figure: string;
}

interface BarChartProps {
  bars: readonly Bar[];
  /** What a screen reader calls them. */
  label: string;
  /** Bars are buttons where this is given; the one that is pressed, by its name. */
  choose?(name: string): void;
  pressed?: string | null;
}

/** Things side by side, each as full as it is. */
export function BarChart({ bars, label, choose, pressed }: BarChartProps) {
  return (
    <div class="bar-chart" role="group" aria-label={label}>
      {bars.map(({ name, filled, figure }) => {
        const content = (
          <>
            <span>
              <Unbroken text={name} />
            </span>
            <span class="track" style={{ '--filled': String(filled) }} />
            <span class="figure">{figure}</span>
          </>
        );
        return choose ? (
          <button
            type="button"
            key={name}
            class="bar"
            aria-pressed={pressed === name}
            onClick={() => choose(name)}
          >
            {content}
          </button>
        ) : (
          <p key={name} class="bar">
            {content}
          </p>
        );
      })}
    </div>
  );
}
