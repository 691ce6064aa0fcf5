import './Stair.css';

/** One step of the staircase of degrees. */
export interface Step {
  readonly degree: number;
  readonly numeral: string;
  /** What stands under the numeral: a chord's name, or nothing. */
  readonly name?: string;
  /** How full the step is, 0 to 1. */
  readonly filled?: number;
  /** How full it was before, 0 to 1: a broken line. */
  readonly before?: number;
  readonly look?: 'right' | 'wrong';
}

interface StairProps {
  steps: readonly Step[];
  /** What a screen reader calls it. */
  label: string;
  /** Steps are buttons where this is given. */
  choose?(degree: number): void;
  /** The step that was chosen: from then on none can be. */
  chosen?: number | null;
  /** The step that is looked at, where steps can be chosen again and again. */
  pressed?: number | null;
}

/** The staircase of the degrees: answers on the steps, or how full each step is. */
export function Stair({ steps, label, choose, chosen = null, pressed = chosen }: StairProps) {
  return (
    <div
      class={`stair ${choose ? 'answers' : ''}`}
      role="group"
      aria-label={label}
      style={{
        '--steps': String(steps.length),
        '--letters': String(Math.max(1, ...steps.map(({ name }) => name?.length ?? 0))),
      }}
    >
      {steps.map((step, index) => {
        const style = {
          '--rise': String(index / Math.max(1, steps.length - 1)),
          '--filled': String(step.filled ?? 0),
          '--before': String(step.before ?? 0),
        };
        const fills = step.filled !== undefined;
        const content = (
          <>
            <span class="numeral">{step.numeral}</span>
            {step.name && <span class="name">{step.name}</span>}
            {fills && <span class="unseen">{Math.round(step.filled! * 100)} percent</span>}
          </>
        );
        return choose ? (
          <button
            type="button"
            key={step.degree}
            class={`step ${fills ? 'fills' : ''} ${step.look ?? ''}`}
            style={style}
            data-answer={step.degree}
            aria-disabled={chosen !== null}
            aria-pressed={pressed === step.degree}
            onClick={() => choose(step.degree)}
          >
            {content}
            {step.look && <span class="unseen">{step.look}</span>}
          </button>
        ) : (
          <span
            key={step.degree}
            class={`step fills ${step.before === undefined ? '' : 'grew'}`}
            style={style}
          >
            {content}
          </span>
        );
      })}
    </div>
  );
}
