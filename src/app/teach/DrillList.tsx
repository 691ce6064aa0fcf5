import { Unbroken } from '../../parts/Written.tsx';
import { useEffect, useRef, useState } from 'preact/hooks';
import { itemsOf, KINDS, wantsGuitar } from '../../cards/index.ts';
import { isPhraseKind, KIND_NAMES, MOST, type Deck, type KindName } from '../../decks/deck.ts';
import { drillOf, isTogether, type MadeDrill } from '../../making/draft.ts';
import { drillWords } from '../deckWords.ts';
import { counted } from '../figures.ts';
import { useFocusAfter } from '../focus.ts';
import { change, draft } from './kept/openDraft.ts';
import { PutBack } from '../PutBack.tsx';

interface DrillListProps {
  deck: Deck;
  /** Opens a drill to be tuned. */
  tune(index: number): void;
  /** Which one the teacher comes back from, if from any. */
  returned: number | null;
}

/** The drills one by one: folded away until somebody wants more than the form. */
export function DrillList(props: DrillListProps) {
  const { drills } = draft.value;
  const [open, setOpen] = useState(props.returned !== null);
  const apart = drills.filter((drill) => !isTogether(drill)).length;
  const fold = useRef<HTMLDetailsElement>(null);
  // Whoever comes back from a drill goes on where they left.
  useEffect(() => {
    if (props.returned === null) return;
    const row = `li:nth-child(${props.returned + 1}) button`;
    fold.current?.querySelector<HTMLElement>(row)?.focus();
  }, []);
  return (
    <details
      class="fold"
      ref={fold}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        Drills one by one · {drills.length}
        {apart > 0 && `, ${apart} with choices of ${apart === 1 ? 'its' : 'their'} own`}
      </summary>
      {open && <Drills {...props} />}
    </details>
  );
}

function Drills({ deck, tune }: DrillListProps) {
  const { drills } = draft.value;
  const [removed, setRemoved] = useState<{ drill: MadeDrill; index: number } | null>(null);
  const root = useRef<HTMLDivElement>(null);
  const focus = useFocusAfter(root);
  const row = (index: number) => `li:nth-child(${index + 1})`;
  const remove = (index: number) => {
    setRemoved({ drill: drills[index]!, index });
    change({ drills: drills.toSpliced(index, 1) });
    focus('.notice button');
  };
  const putBack = ({ drill, index }: { drill: MadeDrill; index: number }) => {
    setRemoved(null);
    change({ drills: drills.toSpliced(index, 0, drill) });
    focus(`${row(index)} button`);
  };
  const move = (index: number, by: -1 | 1) => {
    change({ drills: drills.toSpliced(index, 1).toSpliced(index + by, 0, drills[index]!) });
    const arrows = `${row(index + by)} .drill-moves button`;
    focus(`${arrows}:nth-child(${by < 0 ? 1 : 2})`, `${arrows}:nth-child(${by < 0 ? 2 : 1})`);
  };
  return (
    <div class="drills" ref={root}>
      <p class="soft">
        Of one kind of card, what is new comes from the upper drill first. Kinds take turns, and
        what fades is asked when it is due.
      </p>
      <ol class="drill-list">
        {drills.map((made, index) => (
          <DrillRow key={index} {...{ deck, made, index, tune, move, remove }} />
        ))}
      </ol>
      <div aria-live="polite">
        {removed && (
          <PutBack what={`Drill ${removed.index + 1}`} putBack={() => putBack(removed)} />
        )}
      </div>
      <AddDrill tune={tune} />
    </div>
  );
}

interface DrillRowProps extends Pick<DrillListProps, 'deck' | 'tune'> {
  made: MadeDrill;
  index: number;
  move(index: number, by: -1 | 1): void;
  remove(index: number): void;
}

function DrillRow({ deck, made, index, tune, move, remove }: DrillRowProps) {
  const drill = drillOf(made, draft.value);
  const name = `drill ${index + 1}`;
  const isLast = index === draft.value.drills.length - 1;
  return (
    <li>
      <button
        type="button"
        class="button small"
        aria-label={`Change ${name}: ${drillWords(drill)}`}
        onClick={() => tune(index)}
      >
        <span>
          {index + 1} · <Unbroken text={drillWords(drill)} />
        </span>
        <span class="soft">
          {counted(itemsOf({ ...deck, drills: [drill] }).length, 'item')}
          {!isTogether(made) && ' · choices of its own'}
        </span>
      </button>
      <span class="drill-moves">
        <DrillMove label={`Move ${name} up`} disabled={index === 0} use={() => move(index, -1)}>
          ↑
        </DrillMove>
        <DrillMove label={`Move ${name} down`} disabled={isLast} use={() => move(index, 1)}>
          ↓
        </DrillMove>
        <DrillMove label={`Remove ${name}`} use={() => remove(index)}>
          Remove
        </DrillMove>
      </span>
    </li>
  );
}

interface DrillMoveProps {
  label: string;
  disabled?: boolean;
  use(): void;
  children: string;
}

function DrillMove({ label, disabled, use, children }: DrillMoveProps) {
  return (
    <button type="button" class="button quiet" aria-label={label} disabled={disabled} onClick={use}>
      {children}
    </button>
  );
}

/** One more drill, which is tuned at once. */
function AddDrill({ tune }: Pick<DrillListProps, 'tune'>) {
  const { drills, phrases } = draft.value;
  if (drills.length >= MOST.drills) {
    return <p class="soft">A lesson has at most {MOST.drills} drills.</p>;
  }
  const kinds = KIND_NAMES.filter((kind) => phrases.length > 0 || !isPhraseKind(kind));
  const add = (event: SubmitEvent) => {
    event.preventDefault();
    const kind = new FormData(event.currentTarget as HTMLFormElement).get('kind') as KindName;
    change({ drills: [...drills, drillOf(kind, draft.value)] });
    tune(drills.length);
  };
  return (
    <form class="paste" onSubmit={add}>
      <label class="label" for="another-drill">
        Another drill
      </label>
      <div class="paste-row">
        <select id="another-drill" name="kind">
          <Kinds kinds={kinds.filter((kind) => !wantsGuitar(kind))} />
          <optgroup label="with the guitar">
            <Kinds kinds={kinds.filter(wantsGuitar)} />
          </optgroup>
        </select>
        <button type="submit" class="button">
          Add
        </button>
      </div>
    </form>
  );
}

function Kinds({ kinds }: { kinds: readonly KindName[] }) {
  return (
    <>
      {kinds.map((kind) => (
        <option key={kind} value={kind}>
          {KINDS[kind].words.drills}
        </option>
      ))}
    </>
  );
}
