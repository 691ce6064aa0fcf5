import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import { drillsOn, type MadeDrill, type MadePhrase } from '../../../making/draft.ts';
import { entryOf, isBegun } from '../../../making/entry.ts';
import { explained } from '../../../making/explained.ts';
import { useFocusAfter } from '../../focus.ts';
import { pathWords } from '../../phrases/words.ts';
import { change, draft } from '../kept/form.ts';
import { thrown } from './discarded.ts';

/** A phrase that was removed: where it stood, and the drills before and after. */
interface Removed {
  readonly made: MadePhrase;
  readonly index: number;
  readonly drills: readonly MadeDrill[];
  readonly left: readonly MadeDrill[];
}

/** The phrases of a lesson in the making. */
export function PhraseList({ open, returned }: { open(): void; returned: boolean }) {
  const list = useRef<HTMLElement>(null);
  const focus = useFocusAfter(list);
  // Whoever comes back from a phrase goes on where they left.
  useEffect(() => {
    if (returned) list.current?.focus();
  }, []);
  const { phrases, drills, entry, key, instrument } = draft.value;
  const [removed, setRemoved] = useState<Removed | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const paths = useMemo(
    () =>
      phrases.map(({ phrase, rulings }) =>
        pathWords(explained(phrase, { key, instrument }, rulings)),
      ),
    [phrases, key, instrument],
  );
  const unfinished = entry !== null && isBegun(entry);
  const edit = ({ phrase, rulings }: MadePhrase, index: number) => {
    if (unfinished && entry.of !== index)
      return setSaid('Put in or throw away the phrase you began first.');
    if (!unfinished) change({ entry: entryOf(phrase, rulings, index) });
    open();
  };
  /** Other phrases, and the one that is being changed by the number it has among them; as a new one where it is gone. */
  const renumber = (all: readonly MadePhrase[], number: (of: number) => number | null) =>
    change({
      phrases: all,
      drills: drillsOn(drills, number),
      entry: entry && { ...entry, of: entry.of === null ? null : number(entry.of) },
    });
  const remove = (made: MadePhrase, index: number) => {
    setSaid(null);
    focus('.notice button');
    renumber(phrases.toSpliced(index, 1), (of) => (of === index ? null : of - Number(of > index)));
    setRemoved({ made, index, drills, left: draft.value.drills });
  };
  const putBack = ({ made, index, ...others }: Removed) => {
    setRemoved(null);
    focus(`li:nth-child(${index + 1}) button`);
    renumber(phrases.toSpliced(index, 0, made), (of) => of + Number(of >= index));
    // Drills on the phrase itself come back with it, unless they were changed meanwhile.
    if (drills === others.left) change({ drills: others.drills });
  };
  const takeBack = () => {
    change({ entry: thrown.value!.entry });
    thrown.value = null;
    open();
  };
  return (
    <section class="phrase-list" ref={list} tabIndex={-1} aria-label="Phrases">
      <h2 class="label">Phrases</h2>
      {phrases.length > 0 && (
        <ol>
          {phrases.map((made, index) => (
            <li key={index}>
              <button type="button" class="button small" onClick={() => edit(made, index)}>
                <span>
                  {index + 1} · <span class="music">{paths[index]}</span>
                </span>
              </button>
              <button
                type="button"
                class="button quiet"
                aria-label={`Remove phrase ${index + 1}`}
                onClick={() => remove(made, index)}
              >
                Remove
              </button>
            </li>
          ))}
        </ol>
      )}
      <div aria-live="polite">
        {said && <p class="notice bad">{said}</p>}
        {removed && (
          <p class="notice">
            Phrase {removed.index + 1} is out.{' '}
            <button type="button" class="button quiet" onClick={() => putBack(removed)}>
              Put it back
            </button>
          </p>
        )}
      </div>
      {entry === null && thrown.value?.phrases === phrases && (
        <p class="notice">
          {thrown.value.entry.of === null
            ? 'What you began is thrown away. '
            : 'Nothing was changed. '}
          <button type="button" class="button quiet" onClick={takeBack}>
            Go on with it
          </button>
        </p>
      )}
      {unfinished ? (
        <button type="button" class="button small" onClick={open}>
          Go on with the phrase you began
        </button>
      ) : phrases.length < MOST.phrases ? (
        <button
          type="button"
          class="button small"
          onClick={() => (change({ entry: null }), open())}
        >
          Add a phrase
        </button>
      ) : (
        <p class="soft">A lesson has at most {MOST.phrases} phrases.</p>
      )}
    </section>
  );
}
