import type { Taken } from '../../making/finding.ts';
import { toggled } from '../../making/taken.ts';
import { change, draft } from './kept/openDraft.ts';

/** What the lesson took from reports, each to be used or left out. */
export function FromReports() {
  const { taken } = draft.value;
  if (!taken) return null;
  return (
    <section class="from-reports" aria-label="Taken from the reports">
      <h2 class="label">Taken from the reports</h2>
      <ul>
        {taken.findings.map((_, index) => (
          <Row key={index} taken={taken} index={index} />
        ))}
      </ul>
    </section>
  );
}

function Row({ taken, index }: { taken: Taken; index: number }) {
  const { says, used } = taken.findings[index]!;
  const choose = (on: boolean) => {
    if (on !== used) change(toggled(draft.value, taken, index));
  };
  return (
    <li>
      <span class={used ? '' : 'left-out'}>{says}</span>
      <span role="group" aria-label={says} class="use">
        {([true, false] as const).map((on) => (
          <button
            key={String(on)}
            type="button"
            class="button small"
            aria-pressed={used === on}
            onClick={() => choose(on)}
          >
            {on ? 'use' : 'leave out'}
          </button>
        ))}
      </span>
    </li>
  );
}
