import { useMemo, useState } from 'preact/hooks';
import { MOST } from '../../decks/deck.ts';
import type { Placing } from '../../neck/variations.ts';
import { PhraseStrip } from '../../parts/PhraseStrip.tsx';
import type { Phrase } from '../../theory/phrase.ts';
import { stripOf, explained as explain, type Explained } from './explained.ts';
import { useHearing } from './hearing.ts';
import { elsewhere, varied } from './varied.ts';

interface VariationsProps {
  explained: Explained;
  /** How many phrases the lesson has. */
  kept: number;
  /** Puts a variation into the lesson. */
  keep(phrase: Phrase): void;
}

/** What can be made of a phrase: heard, seen beside it, and kept with a tap. */
export function Variations(props: VariationsProps) {
  return (
    <>
      <Folded title="Variations" made={varied} none="Nothing else can be made of it." {...props} />
      <Folded
        title="Elsewhere on the neck"
        made={elsewhere}
        none="There is no other place for it under one hand."
        {...props}
      />
    </>
  );
}

interface FoldedProps extends VariationsProps {
  title: string;
  made(explained: Explained): Placing[];
  /** Said where nothing can be made. */
  none: string;
}

/** They are made when they are asked for: that takes a moment. */
function Folded({ title, ...props }: FoldedProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="variations" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <Listed {...props} />}
    </details>
  );
}

function Listed({ explained, kept, keep, made, none }: Omit<FoldedProps, 'title'>) {
  const all = useMemo(() => made(explained), [explained]);
  const [said, setSaid] = useState('');
  if (all.length === 0) return <p class="soft">{none}</p>;
  return (
    <>
      <p class="soft" role="status">
        {said}
      </p>
      <ul>
        {all.map((one, index) => (
          <li key={index}>
            <Single
              {...{ one, explained }}
              full={kept >= MOST.phrases}
              keep={() => {
                keep(one.phrase);
                setSaid(`“${one.name}” is phrase ${kept + 1} of the lesson.`);
              }}
            />
          </li>
        ))}
      </ul>
    </>
  );
}

interface SingleProps {
  one: Placing;
  explained: Explained;
  full: boolean;
  keep(): void;
}

function Single({ one, explained, full, keep }: SingleProps) {
  const [beside, setBeside] = useState(false);
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
        <button type="button" class="button small" disabled={full} onClick={keep}>
          Keep it
        </button>
      </div>
      {beside && <Compared one={explain(one.phrase, explained)} explained={explained} />}
    </section>
  );
}

/** The phrase and what was made of it, one over the other, each to be heard. */
function Compared({ one, explained }: { one: Explained; explained: Explained }) {
  return (
    <div class="compared">
      <Heard name="The phrase" of={explained} />
      <Heard name="The variation" of={one} />
    </div>
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
