import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { itemsOf, KINDS, wantsGuitar } from '../../cards/index.ts';
import { isPhraseKind, KIND_NAMES, type KindName } from '../../decks/deck.ts';
import { isKindOf } from '../../decks/kinds.ts';
import { deckOf, isPlain, isTogether, type Draft } from '../../making/draft.ts';
import { draftFault } from '../../making/draftFault.ts';
import type { Item } from '../../practice/item.ts';
import { route } from '../router.ts';
import { DrillDesk } from './DrillDesk.tsx';
import { DrillList } from './DrillList.tsx';
import { Estimate } from './Estimate.tsx';
import { InstrumentChoice } from './InstrumentChoice.tsx';
import { change, draft } from './kept/form.ts';
import { begin, fromElsewhere, kept, openAgain, openId, opening, openKept } from './kept/kept.ts';
import { KeyChoice } from './KeyChoice.tsx';
import { Many } from './Many.tsx';
import { MarkChoice } from './MarkChoice.tsx';
import { MyLessons } from './MyLessons.tsx';
import { PhraseDesk } from './phrases/PhraseDesk.tsx';
import { PhraseList } from './phrases/PhraseList.tsx';
import { Sample } from './Sample.tsx';
import { ShareLink } from './ShareLink.tsx';
import { DegreeChoice, FretChoice, SizeChoice, StringChoice } from './TogetherChoices.tsx';
import { Words } from './Words.tsx';
import './Teach.css';

/** The lesson that is open, or at `#/teach/lessons` all of them. */
export default function Teach() {
  const [former, setFormer] = useState<string | null>(null);
  useEffect(() => void openKept(), []);
  if (kept.value === null) return <main class="screen" aria-busy="true" />;
  if (route.value.rest === 'lessons') return <MyLessons />;
  return <Desk key={opening.value} anew={<Anew former={former} leave={setFormer} />} />;
}

/** What of a lesson is in sight: the form, its phrase, its link, or the drill of a number. */
type Showing = 'form' | 'phrase' | 'link' | number;

/** What the form is come back from: that, or a card that was tried. */
type Returned = Showing | 'card';

function Desk({ anew }: { anew: ComponentChildren }) {
  const [showing, setShowing] = useState<Showing>('form');
  const [sampled, sample] = useState<readonly Item[] | null>(null);
  const [returned, setReturned] = useState<Returned>('form');
  const made = draft.value;
  const deck = useMemo(() => deckOf(made), [made]);
  // Teach, tapped again, is the lesson's form.
  useEffect(() => {
    setShowing('form');
    setReturned('form');
    sample(null);
  }, [route.value]);
  const leave = () => {
    setReturned(showing);
    setShowing('form');
  };
  const leaveSample = () => {
    setReturned('card');
    sample(null);
  };
  if (sampled) return <Sample items={sampled} leave={leaveSample} />;
  if (showing === 'phrase') return <PhraseDesk leave={leave} />;
  if (showing === 'link') return <ShareLink deck={deck} leave={leave} />;
  if (typeof showing === 'number' && showing < made.drills.length) {
    return <DrillDesk deck={deck} index={showing} sample={sample} leave={leave} />;
  }
  return <Form returned={returned} show={setShowing} sample={sample} anew={anew} />;
}

interface FormProps {
  returned: Returned;
  show(showing: Showing): void;
  sample(items: readonly Item[]): void;
  anew: ComponentChildren;
}

/** A lesson: a key, what to drill and where; then its link. */
function Form({ returned, show, sample, anew }: FormProps) {
  const made = draft.value;
  const { items, fault } = useItems(made);
  return (
    <main class="screen teach">
      <FormHead anew={anew} />
      <KeyChoice />
      <InstrumentChoice />
      <TogetherForm />
      <DrillList
        deck={deckOf(made)}
        tune={show}
        returned={typeof returned === 'number' ? returned : null}
      />
      <PhraseList open={() => show('phrase')} returned={returned === 'phrase'} />
      <MarkChoice items={items} />
      <Words />
      {fault ? (
        <p class="notice bad" role="status">
          {fault}
        </p>
      ) : (
        <Estimate items={items} lessonDay={made.lessonDay} />
      )}
      <FormFoot
        returned={returned}
        sample={items.length > 0 ? () => sample(items) : null}
        share={fault ? null : () => show('link')}
      />
    </main>
  );
}

/** The items of a lesson in the making, and what keeps it from being one; null where nothing does. */
function useItems(made: Draft): { items: readonly Item[]; fault: string | null } {
  const deck = deckOf(made);
  const fault = draftFault(made);
  const { instrument, key, degrees, sizes, strings, frets, drills, phrases, marks } = made;
  // What is written about the lesson changes with every letter, and with none of them its items.
  const items = useMemo(
    () => (fault ? [] : itemsOf(deck)),
    [fault, instrument, key, degrees, sizes, strings, frets, drills, phrases, marks],
  );
  const isEmpty = items.length === 0 && deck.drills.length > 0;
  const empty = isEmpty
    ? 'No chord of these sizes lies whole on these strings inside these frets: choose more strings or frets.'
    : null;
  return { items, fault: fault ?? empty };
}

function FormHead({ anew }: Pick<FormProps, 'anew'>) {
  return (
    <header>
      <h1>A lesson</h1>
      <p class="soft links">
        <a class="alone" href="#/teach/lessons">
          Your lessons
        </a>
        <a class="alone" href="#/class">
          Reports of your students
        </a>
      </p>
      {anew}
      {fromElsewhere.value && (
        <p class="notice" role="status">
          This lesson was changed in another window. You see it as it is now.
        </p>
      )}
    </header>
  );
}

interface FormFootProps extends Pick<FormProps, 'returned'> {
  /** Shows a card; null where there is none. */
  sample: (() => void) | null;
  /** Shows the link; null where the lesson has none yet. */
  share: (() => void) | null;
}

function FormFoot({ returned, sample, share }: FormFootProps) {
  const actions = useRef<HTMLDivElement>(null);
  // Whoever comes back goes on where they left; `DrillList` and `PhraseList` see to theirs.
  useEffect(() => {
    const left = { card: 'button', link: '.main' }[String(returned)];
    if (left) actions.current?.querySelector<HTMLElement>(left)?.focus();
  }, []);
  return (
    <div class="buttons last" ref={actions}>
      <button type="button" class="button" disabled={!sample} onClick={() => sample?.()}>
        Try a card
      </button>
      <button type="button" class="button main" disabled={!share} onClick={() => share?.()}>
        Share the link
      </button>
    </div>
  );
}

/** What sets all drills together, but those that were tuned apart. */
function TogetherForm() {
  const made = draft.value;
  const { instrument, key, degrees, sizes, strings, frets, drills, phrases } = made;
  const kinds = drills.filter(isTogether);
  const all = KIND_NAMES.filter((kind) => phrases.length > 0 || !isPhraseKind(kind));
  const chords = kinds.filter((kind) => !isPhraseKind(kind) && !isKindOf('time', kind));
  return (
    <>
      {drills.length > kinds.length && (
        <p class="soft">
          Some drills have choices of their own. What follows is for all the others.
        </p>
      )}
      {(chords.length > 0 || kinds.length === 0) && (
        <>
          <DegreeChoice
            musicKey={key}
            size={sizes[0]}
            degrees={degrees}
            choose={(chosen) => change({ degrees: chosen })}
          />
          <SizeChoice sizes={sizes} choose={(chosen) => change({ sizes: chosen })} />
        </>
      )}
      {(['Cards', 'With the guitar'] as const).map((legend, guitar) => (
        <Many
          key={legend}
          legend={legend}
          all={all.filter((kind) => wantsGuitar(kind) === Boolean(guitar))}
          chosen={kinds}
          label={(kind) => KINDS[kind].words.drills}
          choose={(chosen) => {
            const others = kinds.filter((kind) => wantsGuitar(kind) !== Boolean(guitar));
            change({ drills: withKinds(made, [...others, ...chosen]) });
          }}
        />
      ))}
      {(chords.length > 0 || kinds.length === 0) && (
        <>
          <StringChoice
            instrument={instrument}
            strings={strings}
            choose={(chosen) => change({ strings: chosen })}
          />
          <FretChoice
            instrument={instrument}
            frets={frets}
            choose={(chosen) => change({ frets: chosen })}
          />
        </>
      )}
    </>
  );
}

/** The drills with these kinds following the form: those that go leave the order, one that comes in takes its usual place. */
function withKinds({ drills }: Draft, kinds: readonly KindName[]): Draft['drills'] {
  const left = drills.filter((drill) => !isTogether(drill) || kinds.includes(drill));
  return kinds.reduce((all, kind) => {
    if (all.includes(kind)) return all;
    const later = KIND_NAMES.slice(KIND_NAMES.indexOf(kind));
    const at = all.findIndex((drill) => isTogether(drill) && later.includes(drill));
    return all.toSpliced(at < 0 ? all.length : at, 0, kind);
  }, left);
}

interface AnewProps {
  /** The lesson that was left for a new one. */
  former: string | null;
  leave(id: string | null): void;
}

/** To begin another lesson, and to go back to the one before: it is kept. */
function Anew({ former, leave }: AnewProps) {
  if (!isPlain(draft.value)) {
    const anew = () => {
      leave(openId.value);
      begin();
    };
    return (
      <button type="button" class="button quiet soft anew" onClick={anew}>
        A new lesson
      </button>
    );
  }
  const before = kept.value?.find(({ id }) => id === former);
  if (!before) return null;
  return (
    <p class="notice" role="status">
      This is a new lesson; the one before is kept.{' '}
      <button type="button" class="button quiet" onClick={() => openAgain(before)}>
        Back to the one before
      </button>
    </p>
  );
}
