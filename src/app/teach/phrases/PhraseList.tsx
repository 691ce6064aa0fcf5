import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import { drillsOn, type MadeDrill, type MadePhrase } from '../../../making/draft.ts';
import { entryOf, isBegun, type Entry } from '../../../making/entry.ts';
import { explained } from '../../../making/explained.ts';
import { useFocusAfter } from '../../focus.ts';
import { pathWords } from '../../phrases/phraseWords.ts';
import { change, draft } from '../kept/openDraft.ts';
import { discarded } from './discarded.ts';
import { PutBack } from '../../PutBack.tsx';

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
  const { entry } = draft.value;
  const [removed, setRemoved] = useState<Removed | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const edit = ({ phrase, rulings, hand }: MadePhrase, index: number) => {
    const unfinished = isUnfinished(entry);
    if (unfinished && entry?.of !== index)
      return setSaid('Put in or throw away the phrase you began first.');
    if (!unfinished) change({ entry: entryOf(phrase, rulings, index, hand) });
    open();
  };
  const remove = (index: number) => {
    setSaid(null);
    focus('.notice button');
    setRemoved(takeOut(index));
  };
  const putBack = (one: Removed) => {
    setRemoved(null);
    focus(`li:nth-child(${one.index + 1}) button`);
    putIn(one);
  };
  return (
    <section class="phrase-list" ref={list} tabIndex={-1} aria-label="Phrases">
      <h2 class="label">Phrases</h2>
      <Rows edit={edit} remove={remove} />
      <div aria-live="polite">
        {said && <p class="notice bad">{said}</p>}
        {removed && (
          <PutBack what={`Phrase ${removed.index + 1}`} putBack={() => putBack(removed)} />
        )}
      </div>
      <Discarded open={open} />
      <AddPhrase open={open} />
    </section>
  );
}

interface RowsProps {
  edit(made: MadePhrase, index: number): void;
  remove(index: number): void;
}

function Rows({ edit, remove }: RowsProps) {
  const { phrases, key, instrument } = draft.value;
  const paths = useMemo(
    () =>
      phrases.map(({ phrase, rulings, hand }) =>
        pathWords(explained(phrase, { key, instrument }, rulings, hand)),
      ),
    [phrases, key, instrument],
  );
  if (phrases.length === 0) return null;
  return (
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
            onClick={() => remove(index)}
          >
            Remove
          </button>
        </li>
      ))}
    </ol>
  );
}

/** What was discarded last, as long as it can be taken back. */
function Discarded({ open }: { open(): void }) {
  const { entry, phrases } = draft.value;
  const last = discarded.value;
  if (entry !== null || last?.phrases !== phrases) return null;
  const takeBack = () => {
    change({ entry: last.entry });
    discarded.value = null;
    open();
  };
  return (
    <p class="notice">
      {last.entry.of === null ? 'What you began is thrown away. ' : 'Nothing was changed. '}
      <button type="button" class="button quiet" onClick={takeBack}>
        Go on with it
      </button>
    </p>
  );
}

/** To write one more phrase, or the one that was begun. */
function AddPhrase({ open }: { open(): void }) {
  const { phrases, entry } = draft.value;
  if (isUnfinished(entry)) {
    return (
      <button type="button" class="button small" onClick={open}>
        Go on with the phrase you began
      </button>
    );
  }
  if (phrases.length >= MOST.phrases) {
    return <p class="soft">A lesson has at most {MOST.phrases} phrases.</p>;
  }
  return (
    <button type="button" class="button small" onClick={() => (change({ entry: null }), open())}>
      Add a phrase
    </button>
  );
}

function isUnfinished(entry: Entry | null): boolean {
  return entry !== null && isBegun(entry);
}

/** Takes a phrase out of the lesson, and tells what putting it back needs. */
function takeOut(index: number): Removed {
  const { phrases, drills } = draft.value;
  const made = phrases[index]!;
  renumber(phrases.toSpliced(index, 1), (of) => (of === index ? null : of - Number(of > index)));
  return { made, index, drills, left: draft.value.drills };
}

function putIn({ made, index, drills, left }: Removed): void {
  const untouched = draft.value.drills === left;
  renumber(draft.value.phrases.toSpliced(index, 0, made), (of) => of + Number(of >= index));
  // Drills on the phrase itself come back with it, unless they were changed meanwhile.
  if (untouched) change({ drills });
}

/** Other phrases, and the one that is being changed by the number it has among them; as a new one where it is gone. */
function renumber(phrases: readonly MadePhrase[], number: (of: number) => number | null): void {
  const { drills, entry } = draft.value;
  change({
    phrases,
    drills: drillsOn(drills, number),
    entry: entry && { ...entry, of: entry.of === null ? null : number(entry.of) },
  });
}
