import { countWords } from '../../theory/timing/figure.ts';
import type { TimePlan } from '../../theory/timing/plan.ts';
import type { Tapping } from './useTapping.ts';

/** The bar that is counted, word by word; then a mark that is seen with every click. Beside it what stops it. */
export function Count({ plan, tapping }: { plan: TimePlan; tapping: Tapping }) {
  const { figure, countIn, clicks } = plan;
  const { phase, lit, isOn, stop } = tapping;
  const isClick = lit !== null && lit >= countIn.length;
  const isFirst = isClick && clicks[lit - countIn.length]?.first;
  return (
    <div class="count">
      <p aria-hidden="true" class={`count-words ${phase === 'keeping' ? 'past' : ''}`}>
        {countWords(figure).map((words, beat) => (
          <span key={beat}>
            {words.map((word, i) => (
              <span
                key={i}
                class={`${i === 0 ? 'beat' : ''} ${lit === beat * words.length + i ? 'lit' : ''}`}
              >
                {word}
              </span>
            ))}
          </span>
        ))}
      </p>
      <div class="click">
        <span
          aria-hidden="true"
          class={`click-mark ${isClick ? 'lit' : ''} ${isFirst ? 'first' : ''}`}
        />
        {isOn && (
          <button type="button" class="button quiet" onClick={stop}>
            Stop
          </button>
        )}
      </div>
    </div>
  );
}
