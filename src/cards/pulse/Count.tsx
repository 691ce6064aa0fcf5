import { countWords } from '../../theory/timing/figure.ts';
import type { TimePlan } from '../../theory/timing/plan.ts';
import type { Tapping } from './useTapping.ts';

/** The bar that is counted, word by word; then a mark that is seen with every click. */
export function Count({ plan, tapping }: { plan: TimePlan; tapping: Tapping }) {
  const { figure, countIn, clicks } = plan;
  const { phase, lit } = tapping;
  const isClick = lit !== null && lit >= countIn.length;
  const isFirst = isClick && clicks[lit - countIn.length]?.first;
  return (
    <div class="count" aria-hidden="true">
      <p class={`count-words ${phase === 'keeping' ? 'past' : ''}`}>
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
      <span class={`click-mark ${isClick ? 'lit' : ''} ${isFirst ? 'first' : ''}`} />
    </div>
  );
}
