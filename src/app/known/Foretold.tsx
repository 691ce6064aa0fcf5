import { hindsight } from '../../memory/hindsight.ts';
import { Facts } from '../../parts/Facts.tsx';
import { percent } from '../figures.ts';
import { memory } from '../state.ts';

/** How the forecast did against what then happened, and against always saying the student's own mean. */
export function Foretold() {
  const back = hindsight(memory.value.of);
  return (
    <section class="sheet">
      <h2>How the forecast did</h2>
      {back === null ? (
        <p class="soft">Some days of practice are needed before there is anything to compare.</p>
      ) : (
        <>
          <p>
            {back.ours < back.constant
              ? 'It foretold your answers better than your mean alone would have.'
              : 'So far your mean alone would have foretold your answers as well.'}
          </p>
          <p class="soft">
            Log loss over {back.answers} answers, less is better: {back.ours.toFixed(3)}; your mean{' '}
            {back.constant.toFixed(3)}.
          </p>
          <Facts
            caption="What was foretold and what happened"
            head={['Foretold', 'Happened', 'Answers']}
            rows={back.fifths
              .filter(({ answers }) => answers > 0)
              .map(({ foretold, happened, answers }) => [
                percent(foretold),
                percent(happened),
                String(answers),
              ])}
          />
        </>
      )}
    </section>
  );
}
