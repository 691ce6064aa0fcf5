import { step } from '../../../making/entry.ts';
import { fretsLeft } from '../../../neck/instrument.ts';
import type { HandChoice } from '../../../neck/choice.ts';
import { Choice, Choices } from '../../../parts/Choices.tsx';
import { unplace } from '../../../theory/editing.ts';
import type { Writing } from './useEntry.ts';

const LIES = [
  ['However it lies best', null],
  ['Movable', 'movable'],
  ['With open strings', 'open strings'],
] as const;

/** The frets that a phrase can be asked to lie at. */
const POSITIONS = 12;

/** How the phrase lies on the neck. A choice finds every note's place anew; what is tapped after it stays. */
export function HandChoices({
  entry: { hand },
  explained,
  edit,
}: Pick<Writing, 'entry' | 'explained' | 'edit'>) {
  if (!explained) return null;
  const choose = (next: HandChoice | null) =>
    edit((now) => step(now, { sketch: unplace(now.sketch), hand: next }));
  const { instrument, handFault } = explained;
  const frets = Array.from({ length: Math.min(POSITIONS, fretsLeft(instrument)) }, (_, i) => i + 1);
  return (
    <details class="hand">
      <summary>How it lies</summary>
      <Choices legend="On the neck">
        {LIES.map(([label, choice]) => (
          <Choice
            key={label}
            label={label}
            name="hand"
            checked={hand === choice}
            change={() => choose(choice)}
          />
        ))}
      </Choices>
      <Choices legend="The index finger at fret">
        {frets.map((fret) => (
          <Choice
            key={fret}
            label={String(fret)}
            name="hand"
            checked={hand === fret}
            change={() => choose(fret)}
          />
        ))}
      </Choices>
      {handFault && (
        <p class="notice" role="status">
          {handFault} It is shown as it lies best.
        </p>
      )}
    </details>
  );
}
