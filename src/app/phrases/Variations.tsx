import { useMemo, useState } from 'preact/hooks';
import { MOST } from '../../decks/deck.ts';
import type { Placement } from '../../neck/placement.ts';
import { PhraseStrip } from '../../parts/PhraseStrip.tsx';
import type { Key } from '../../theory/key.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { explained as explain, stripOf, type Explained } from './explained.ts';
import { useHearing } from './hearing.ts';
import { OtherKey } from './OtherKey.tsx';
import { useSlices } from './slices.ts';
import { elsewhere, varied, type Making } from './varied.ts';

export interface VariationsProps {
  explained: Explained;
  /** How many phrases the lesson has. */
  kept: number;
  /** Puts a variation into the lesson. */
  keep(phrase: Phrase): void;
  /** Begins another lesson, in the key of a variation, with it. */
  begin(key: Key, phrase: Phrase): void;
}

/** What can be made of a phrase: heard, seen beside it, and kept with a tap. */
export function Variations(props: VariationsProps) {
  return (
    <>
      <Folded title="Variations">
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

interface ListedProps extends VariationsProps {
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
            <Single one={one} explained={explained} musicKey={explained.key}>
              <button
                type="button"
                class="button small"
                disabled={kept >= MOST.phrases}
                onClick={() => {
                  keep(one.phrase);
                  setSaid(`“${one.name}” is phrase ${kept + 1} of the lesson.`);
                }}
              >
                Keep it
              </button>
            </Single>
          </li>
        ))}
      </ul>
    </>
  );
}

interface SingleProps {
  one: Placement;
  explained: Explained;
  /** What the variation is in. */
  musicKey: Key;
  /** What can be done with it. */
  children: preact.ComponentChildren;
}

/** A variation: what it changes, and on demand beside the phrase it comes from. */
export function Single({ one, explained, musicKey, children }: SingleProps) {
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
          aria-expanded={beside}
          onClick={() => setBeside(!beside)}
        >
          Compare
        </button>
        {children}
      </div>
      {other && (
        <div class="compared">
          <Heard name="The phrase" of={explained} />
          <Heard name="The variation" of={other} />
        </div>
      )}
    </section>
  );
}

function Heard({ name, of }: { name: string; of: Explained }) {
  const { lit, playing, toggle } = useHearing(of);
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
