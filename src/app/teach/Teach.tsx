import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { itemsOf } from '../../cards/index.ts';
import type { Deck } from '../../decks/deck.ts';
import { deckOf, isPlain, type Draft } from '../../making/draft.ts';
import { draftFault } from '../../making/draftFault.ts';
import { useWide } from '../../parts/lying.ts';
import type { Item } from '../../practice/item.ts';
import { route } from '../router.ts';
import { DrillDesk } from './DrillDesk.tsx';
import { DrillList } from './DrillList.tsx';
import { LessonTime } from './LessonTime.tsx';
import { FromReports } from './FromReports.tsx';
import { InstrumentChoice } from './InstrumentChoice.tsx';
import { draft } from './kept/openDraft.ts';
import {
  beginDraft,
  fromElsewhere,
  kept,
  openAgain,
  openId,
  opening,
  openKept,
} from './kept/kept.ts';
import { MarkChoice } from './MarkChoice.tsx';
import { MiniCard } from './MiniCard.tsx';
import { MyLessons } from './MyLessons.tsx';
import { PhraseDesk } from './phrases/PhraseDesk.tsx';
import { PhraseList } from './phrases/PhraseList.tsx';
import { Sample } from './Sample.tsx';
import { Sentence } from './Sentence.tsx';
import { LinkBeside, ShareLink } from './ShareLink.tsx';
import { TitleAndNote } from './TitleAndNote.tsx';
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
  return <Form {...{ deck, returned, sample, anew }} show={setShowing} />;
}

interface FormProps {
  deck: Deck;
  returned: Returned;
  show(showing: Showing): void;
  sample(items: readonly Item[]): void;
  anew: ComponentChildren;
}

/** A lesson: in one sentence, with a card of it, the rest folded; then its link. */
function Form({ deck, returned, show, sample, anew }: FormProps) {
  const wide = useWide();
  // The deck whose link stands beside the form: once the form has another one, that is to be shared anew.
  const [beside, setBeside] = useState<Deck | null>(null);
  const shared = wide && beside === deck;
  const made = draft.value;
  const { items, fault } = useItems(made);
  const tryOne = items.length > 0 ? () => sample(items) : null;
  const foot = (
    <FormFoot
      returned={returned}
      sample={tryOne}
      share={fault || shared ? null : () => (wide ? setBeside(deck) : show('link'))}
    />
  );
  return (
    <main class="screen teach whole-lesson">
      <FormHead anew={anew} />
      <div class="in-a-sentence">
        <FromReports />
        <Sentence />
      </div>
      <div class="outcome">
        <div class="at-a-glance">
          {tryOne && <MiniCard items={items} open={tryOne} />}
          {fault ? (
            <p class="notice bad" role="status">
              {fault}
            </p>
          ) : (
            <LessonTime items={items} lessonDay={made.lessonDay} />
          )}
        </div>
        {wide && foot}
        {shared && <LinkBeside deck={deck} />}
      </div>
      <div class="folded">
        <PhraseList open={() => show('phrase')} returned={returned === 'phrase'} />
        <TitleAndNote />
        <DrillList
          deck={deck}
          tune={show}
          returned={typeof returned === 'number' ? returned : null}
        />
        <InstrumentChoice />
        <MarkChoice items={items} />
      </div>
      {!wide && foot}
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
      beginDraft();
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
