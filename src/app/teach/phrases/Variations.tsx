import { useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import type { Explained } from '../../../making/explained.ts';
import { elsewhere, varied, type Making } from '../../../making/varied.ts';
import { OtherKey, type OtherKeyProps } from './OtherKey.tsx';
import { useSlices } from './useSlices.ts';
import { Variation } from './Variation.tsx';

/** What can be made of a phrase: heard, seen beside it, and kept with a tap. */
export function Variations(props: OtherKeyProps) {
  return (
    <>
      <Folded title="In the same key">
        {() => <Listed {...props} make={varied} none="Nothing else can be made of it." />}
      </Folded>
      <Folded title="Elsewhere on the neck">
        {() => (
          <Listed
            {...props}
            make={elsewhere}
            none="There is no other place for it under one hand."
          />
        )}
      </Folded>
      <Folded title="In another key">{() => <OtherKey {...props} />}</Folded>
    </>
  );
}

/** They are made when they are asked for: that takes a moment. */
function Folded({ title, children }: { title: string; children(): preact.ComponentChildren }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="variations" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && children()}
    </details>
  );
}

interface ListedProps extends Omit<OtherKeyProps, 'begin'> {
  make(explained: Explained): Making;
  /** Said where nothing can be made. */
  none: string;
}

function Listed({ explained, kept, keep, make, none }: ListedProps) {
  const { made, done } = useSlices(() => make(explained), [explained]);
  const [said, setSaid] = useState('');
  return (
    <>
      <p class="soft" role="status">
        {said || (done ? (made.length === 0 ? none : '') : 'One moment …')}
      </p>
      <ul aria-busy={!done}>
        {made.map((one) => (
          <li key={one.name}>
            <Variation one={one} explained={explained} musicKey={explained.key}>
              <button
                type="button"
                class="button small"
                disabled={kept >= MOST.phrases}
                onClick={() => {
                  const number = keep(one.phrase);
                  setSaid(`“${one.name}” is phrase ${number} of the lesson.`);
                }}
              >
                Keep it
              </button>
            </Variation>
          </li>
        ))}
      </ul>
    </>
  );
}
