import type { Group } from '../../theory/analysis/analysis.ts';
import { numeralLabel } from '../../theory/naming.ts';

interface GroupChoiceProps {
  groups: readonly Group[];
  /** The one that is shown by itself, or null. */
  shown: number | null;
  show(group: number | null): void;
}

/** Which arpeggio of a phrase is shown: one of them, or all. */
export function GroupChoice({ groups, shown, show }: GroupChoiceProps) {
  return (
    <div class="groups" role="group" aria-label="Its arpeggios">
      <button
        type="button"
        class="button small"
        aria-pressed={shown === null}
        onClick={() => show(null)}
      >
        all of it
      </button>
      {groups.map(({ chord, from, to }, index) => (
        <button
          key={from}
          type="button"
          class="button small music"
          aria-label={`${numeralLabel(chord)}, ${from + 1 === to ? `note ${to}` : `notes ${from + 1} to ${to}`}`}
          aria-pressed={shown === index}
          onClick={() => show(shown === index ? null : index)}
        >
          {numeralLabel(chord)}
        </button>
      ))}
    </div>
  );
}
