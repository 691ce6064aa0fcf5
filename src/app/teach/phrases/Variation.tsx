import { useMemo, useState } from 'preact/hooks';
import { explained as explain, type Explained } from '../../../making/explained.ts';
import type { Placement } from '../../../neck/placement.ts';
import { PhraseStrip } from '../../../parts/PhraseStrip.tsx';
import { Sheet } from '../../../parts/Sheet.tsx';
import type { Key } from '../../../theory/key.ts';
import { stripOf } from '../../phrases/drawn.ts';
import { usePhraseHearing } from '../../phrases/hearing.ts';

interface VariationProps {
  one: Placement;
  explained: Explained;
  /** What the variation is in. */
  musicKey: Key;
  /** What can be done with it. */
  children: preact.ComponentChildren;
}

/** A variation: what it changes, and on demand over it the phrase it comes from and what became of it. */
export function Variation({ one, explained, musicKey, children }: VariationProps) {
  const [beside, setBeside] = useState(false);
  const { instrument } = explained;
  const other = useMemo(
    () => (beside ? explain(one.phrase, { key: musicKey, instrument }) : null),
    [beside, one, musicKey, instrument],
  );
  return (
    <section aria-label={one.name}>
      <h3>{one.name}</h3>
      <p class="soft">{one.says}</p>
      <div class="buttons">
        <button
          type="button"
          class="button small"
          aria-haspopup="dialog"
          onClick={() => setBeside(true)}
        >
          Compare
        </button>
        {children}
      </div>
      {other && (
        <Sheet title={one.name} close={() => setBeside(false)}>
          <div class="compared">
            <Heard name="The phrase" of={explained} />
            <Heard name="The variation" of={other} />
          </div>
        </Sheet>
      )}
    </section>
  );
}

function Heard({ name, of }: { name: string; of: Explained }) {
  const { lit, playing, toggle } = usePhraseHearing(of);
  return (
    <figure aria-label={name}>
      <figcaption>
        <span class="label">{name}</span>
        <button
          type="button"
          class="button small"
          aria-label={`${playing ? 'Stop' : 'Hear'} ${name.toLowerCase()}`}
          onClick={toggle}
        >
          {playing ? 'Stop' : 'Hear'}
        </button>
      </figcaption>
      <PhraseStrip
        notes={stripOf(of)}
        strings={of.instrument.tuning.length}
        lit={lit}
        stretch={null}
        choose={toggle}
      />
    </figure>
  );
}
