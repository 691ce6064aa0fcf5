import { isolated } from '../../decks/plain.ts';
import { Written } from '../../parts/Written.tsx';
import { useEffect, useRef, useState } from 'preact/hooks';
import { MOST } from '../../decks/deck.ts';
import { type Draft, usualTitle } from '../../making/draft.ts';
import { draftOf } from '../../making/fromDeck.ts';
import { keyLabel } from '../../theory/naming.ts';
import { counted } from '../figures.ts';
import { useFocusAfter } from '../focus.ts';
import { READYMADE } from '../readymade.ts';
import { go } from '../router.ts';
import { lessons, settings } from '../state.ts';
import {
  beginDraft,
  copy,
  kept,
  keptTitle,
  openAgain,
  openId,
  rename,
  setAway,
  type KeptDraft,
} from './kept/kept.ts';
import { plain } from './TitleAndNote.tsx';

/** The lessons that the teacher made, and all that another one can start from. */
export function MyLessons() {
  const all = kept.value ?? [];
  const here = all.filter(({ away }) => !away);
  const away = all.filter((one) => one.away);
  const root = useRef<HTMLElement>(null);
  const focus = useFocusAfter(root);
  return (
    <main class="screen lessons" ref={root}>
      <header>
        <h1 tabIndex={-1}>Your lessons</h1>
        {all.length === 0 && (
          <p class="soft">
            None yet. Each one you begin is kept on this device, finished or not, and goes into the
            backup file.
          </p>
        )}
      </header>
      <button type="button" class="button main" onClick={() => (beginDraft(), go('teach'))}>
        A new lesson
      </button>
      <ul class="lesson-list">
        {here.map((one) => (
          <Row key={one.id} one={one} moved={() => focus('h1')} />
        ))}
      </ul>
      {away.length > 0 && (
        <details>
          <summary>Put away · {away.length}</summary>
          <ul class="lesson-list">
            {away.map((one) => (
              <Row key={one.id} one={one} moved={() => focus('h1')} />
            ))}
          </ul>
        </details>
      )}
      <StartFrom />
    </main>
  );
}

/** @param moved called as it goes to the other list */
function Row({ one, moved }: { one: KeptDraft; moved(): void }) {
  const [renaming, setRenaming] = useState(false);
  const { key, drills, phrases } = one.draft;
  const root = useRef<HTMLLIElement>(null);
  const focus = useFocusAfter(root);
  const named = () => {
    setRenaming(false);
    focus('[aria-label^="Rename"]');
  };
  const move = (to: boolean) => {
    setAway(one, to);
    moved();
  };
  return (
    <li class="sheet" ref={root}>
      {renaming ? (
        <Rename one={one} leave={named} />
      ) : (
        <h2>
          <Written text={keptTitle(one)} />
        </h2>
      )}
      <p class="soft">
        {keyLabel(key, settings.value.naming)} · {counted(drills.length, 'drill')}
        {phrases.length > 0 && `, ${counted(phrases.length, 'phrase')}`} · {sharedWords(one)}
        {one.id === openId.value && ' · open now'}
      </p>
      <div class="buttons lesson-moves">
        {one.away ? (
          <LessonMove name="Take back" one={one} use={() => move(false)} />
        ) : (
          <>
            <LessonMove name="Open" one={one} use={() => (openAgain(one), go('teach'))} />
            <LessonMove name="Copy" one={one} use={() => (copy(one), go('teach'))} />
            <LessonMove name="Rename" one={one} use={() => setRenaming(true)} />
            <LessonMove name="Put away" one={one} use={() => move(true)} />
          </>
        )}
      </div>
    </li>
  );
}

/** A button that says to a screen reader of which lesson it is. */
function LessonMove({ name, one, use }: { name: string; one: KeptDraft; use(): void }) {
  return (
    <button
      type="button"
      class="button"
      aria-label={`${name}: ${isolated(keptTitle(one))}`}
      onClick={use}
    >
      {name}
    </button>
  );
}

/** `shared 24 November`, `not shared`, `changed since it was shared 24 November`. */
function sharedWords({ shared, changed }: KeptDraft): string {
  const last = shared.at(-1);
  if (!last) return 'not shared';
  const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' }).format(last.at);
  return `${changed > last.at ? 'changed since it was shared' : 'shared'} ${day}`;
}

function Rename({ one, leave }: { one: KeptDraft; leave(): void }) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  const take = (event: SubmitEvent) => {
    event.preventDefault();
    rename(one, plain(field.current!.value));
    leave();
  };
  return (
    <form class="paste" onSubmit={take}>
      <label class="label" for={`title-${one.id}`}>
        Title
      </label>
      <div class="paste-row">
        <input
          id={`title-${one.id}`}
          ref={field}
          type="text"
          maxLength={MOST.title}
          placeholder={usualTitle(one.draft.key)}
          value={one.draft.title}
          onKeyDown={(event) => event.key === 'Escape' && leave()}
        />
        <button type="submit" class="button">
          Name
        </button>
      </div>
    </form>
  );
}

/** Lessons to begin another one from: ready-made, or come to this device as links. */
function StartFrom() {
  const decks = READYMADE.map(({ deck }) => deck);
  const mine = new Set(kept.value?.flatMap(({ shared }) => shared.map(({ deck }) => deck)));
  const came = lessons.value.filter(({ id }) => !mine.has(id)).map(({ deck }) => deck);
  const titles = new Set(came.map(({ title }) => title));
  const all = [...came, ...decks.filter(({ title }) => !titles.has(title))];
  const start = (made: Draft) => {
    beginDraft(made);
    go('teach');
  };
  return (
    <section class="start">
      <h2>Start from</h2>
      <a class="button" href="#/class">
        What is weak, from reports
      </a>
      {all.map((deck, i) => (
        <button type="button" class="button" key={i} onClick={() => start(draftOf(deck))}>
          <Written text={deck.title} />
        </button>
      ))}
    </section>
  );
}
