import { useState } from 'preact/hooks';
import { itemsOf } from '../../cards/index.ts';
import type { KindName } from '../../decks/deck.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { minutesADay } from '../../practice/summary.ts';
import { chordOn, SIZES, type Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { noteLabel, scaleLabel } from '../../theory/naming.ts';
import { hasSevenNotes, SCALE_KINDS, type ScaleKind } from '../../theory/scale.ts';
import { nothing } from '../../memory/memory.ts';
import { startOf, dayAfter } from '../days.ts';
import { PhraseDesk } from '../phrases/PhraseDesk.tsx';
import { PhraseList } from '../phrases/PhraseList.tsx';
import { settings } from '../state.ts';
import {
  beginAnew,
  change,
  deckOf,
  draft,
  draftFault,
  isPlain,
  usualTitle,
  type Draft,
} from './draft.ts';
import { MarkChoice } from './MarkChoice.tsx';
import { Sample } from './Sample.tsx';
import { ShareLink } from './ShareLink.tsx';
import './Teach.css';

const USUAL_TONICS = ['C', 'G', 'D', 'A', 'E', 'F', 'Bb', 'Eb', 'Ab'];
const MORE_TONICS = ['B', 'F#', 'C#', 'G#', 'D#', 'A#', 'Db', 'Gb', 'Cb'];
const USUAL_SCALES: readonly ScaleKind[] = ['major', 'minor'];
const OTHER_SCALES = SCALE_KINDS.filter(
  (kind) => hasSevenNotes(kind) && !USUAL_SCALES.includes(kind),
);

const KIND_WORDS: Record<KindName, string> = {
  spot: 'name what is seen',
  place: 'place what is named',
  trace: 'trace what is heard',
  outline: 'name the arpeggios of the phrases',
  follow: 'place the next arpeggio of the phrases',
  order: 'order the arpeggios of the phrases',
  vary: 'tell variations of the phrases',
  fill: 'name the missing note of the phrases',
};

const STRING_SETS = ['6-5', '5-4', '4-3', '3-2', '2-1', '6-5-4-3', '5-4-3-2', '4-3-2-1'];
const HIGHEST_FRET = 17;
const ALL_DEGREES = ['1', '2', '3', '4', '5', '6', '7'] as const;

/** The usual string sets that the instrument has, and those that the lesson has besides. */
function stringSets({ instrument, strings }: Draft): string[] {
  const usual = STRING_SETS.filter((set) => Number(set[0]) <= instrument.tuning.length);
  return [...usual, ...strings.filter((set) => !usual.includes(set))];
}

/** A lesson: a key, what to drill and where; then its link. */
export default function Teach() {
  const [showing, setShowing] = useState<'form' | 'sample' | 'phrase' | 'link'>('form');
  const [returned, setReturned] = useState(false);
  const deck = deckOf(draft.value);
  const fault = draftFault(draft.value);
  const items = fault ? [] : itemsOf(deck);
  if (showing === 'sample') return <Sample items={items} leave={() => setShowing('form')} />;
  if (showing === 'phrase') {
    const leave = () => {
      setShowing('form');
      setReturned(true);
    };
    return <PhraseDesk leave={leave} />;
  }
  if (showing === 'link') return <ShareLink deck={deck} leave={() => setShowing('form')} />;
  const minutes = minutesADay(
    items,
    nothing(),
    Date.now(),
    deck.lessonDay ? startOf(deck.lessonDay) : null,
  );
  const empty =
    fault ??
    (items.length === 0
      ? 'No chord of these sizes lies whole on these strings inside these frets: choose more strings or frets.'
      : null);
  return (
    <main class="screen teach">
      <header>
        <h1>A lesson</h1>
        <p class="soft">
          <a class="alone" href="#/class">
            Reports of your students
          </a>
        </p>
        <Anew />
      </header>
      <KeyChoice />
      <Many
        legend="Degrees"
        music
        all={ALL_DEGREES}
        chosen={draft.value.degrees.map(String)}
        label={(degree) =>
          chordOn(deck.key, Number(degree), draft.value.sizes[0] ?? 'triad').numeral
        }
        choose={(degrees) => change({ degrees: degrees.map(Number) })}
      />
      <Many
        legend="Chords"
        all={SIZES.slice(0, 3)}
        chosen={draft.value.sizes}
        label={(size) => `${size}s`}
        choose={(sizes) => change({ sizes: sizes as Size[] })}
      />
      <Many
        legend="Cards"
        all={['spot', 'place', 'trace'] as const}
        chosen={draft.value.kinds}
        label={(kind) => KIND_WORDS[kind]}
        choose={(kinds) => change({ kinds })}
      />
      <Many
        legend="Strings"
        all={stringSets(draft.value)}
        chosen={draft.value.strings}
        label={(set) => set.replaceAll('-', '–')}
        choose={(strings) => change({ strings })}
      />
      <FretChoice />
      <PhraseList open={() => setShowing('phrase')} returned={returned} />
      <MarkChoice items={items} />
      <Words />
      {empty ? (
        <p class="notice bad" role="status">
          {empty}
        </p>
      ) : (
        <p class="soft" role="status">
          {items.length} items · about {minutes} {minutes === 1 ? 'minute' : 'minutes'} a day
        </p>
      )}
      <div class="buttons last">
        <button
          type="button"
          class="button"
          disabled={empty !== null}
          onClick={() => setShowing('sample')}
        >
          Try a card
        </button>
        <button
          type="button"
          class="button main"
          disabled={empty !== null}
          onClick={() => setShowing('link')}
        >
          Share the link
        </button>
      </div>
    </main>
  );
}

/** To let go of the lesson in the making, and to take that back. */
function Anew() {
  const [former, setFormer] = useState<Draft | null>(null);
  if (!isPlain(draft.value)) {
    const anew = () => {
      setFormer(draft.value);
      beginAnew();
    };
    return (
      <button type="button" class="button quiet soft anew" onClick={anew}>
        Begin anew
      </button>
    );
  }
  if (!former) return null;
  return (
    <p class="notice" role="status">
      This is a new lesson.{' '}
      <button type="button" class="button quiet" onClick={() => change(former)}>
        Back to the one before
      </button>
    </p>
  );
}

function KeyChoice() {
  const { key } = draft.value;
  const [more, setMore] = useState(MORE_TONICS.includes(key.tonic));
  const [other, setOther] = useState(OTHER_SCALES.includes(key.scale));
  const naming =
    settings.value.naming === 'german' || settings.value.naming === 'solfege'
      ? settings.value.naming
      : 'english';
  const choose = (part: Partial<Key>) => change({ key: { ...key, ...part } });
  return (
    <>
      <Choices legend="Key">
        {[...USUAL_TONICS, ...(more ? MORE_TONICS : [])].map((tonic) => (
          <Choice
            key={tonic}
            music
            name="tonic"
            label={noteLabel(tonic, naming, key)}
            checked={key.tonic === tonic}
            change={() => choose({ tonic })}
          />
        ))}
        {!more && (
          <button type="button" class="button small" onClick={() => setMore(true)}>
            more
          </button>
        )}
      </Choices>
      <Choices legend="Scale">
        {[...USUAL_SCALES, ...(other ? OTHER_SCALES : [])].map((scale) => (
          <Choice
            key={scale}
            name="scale"
            label={scaleLabel(scale)}
            checked={key.scale === scale}
            change={() => choose({ scale })}
          />
        ))}
        {!other && (
          <button type="button" class="button small" onClick={() => setOther(true)}>
            other scale
          </button>
        )}
      </Choices>
    </>
  );
}

interface ManyProps<T extends string> {
  legend: string;
  music?: boolean;
  all: readonly T[];
  chosen: readonly T[];
  label(value: T): string;
  choose(chosen: T[]): void;
}

/** Any number out of several, kept in their order. */
function Many<T extends string>({
  legend,
  music = false,
  all,
  chosen,
  label,
  choose,
}: ManyProps<T>) {
  return (
    <Choices legend={legend}>
      {all.map((value) => (
        <Choice
          key={value}
          music={music}
          label={label(value)}
          checked={chosen.includes(value)}
          change={(on) =>
            choose(all.filter((other) => (other === value ? on : chosen.includes(other))))
          }
        />
      ))}
    </Choices>
  );
}

function FretChoice() {
  const [low, high] = draft.value.frets;
  const frets = Array.from({ length: HIGHEST_FRET + 1 }, (_, fret) => fret);
  return (
    <fieldset class="frets">
      <legend>Frets</legend>
      <label>
        from{' '}
        <select
          value={low}
          onChange={(event) =>
            change({
              frets: [
                Number(event.currentTarget.value),
                Math.max(high, Number(event.currentTarget.value) + 2),
              ],
            })
          }
        >
          {frets.slice(0, -2).map((fret) => (
            <option key={fret} value={fret}>
              {fret === 0 ? 'open' : fret}
            </option>
          ))}
        </select>
      </label>
      <label>
        to{' '}
        <select
          value={high}
          onChange={(event) =>
            change({
              frets: [
                Math.min(low, Number(event.currentTarget.value) - 2),
                Number(event.currentTarget.value),
              ],
            })
          }
        >
          {frets.slice(2).map((fret) => (
            <option key={fret} value={fret}>
              {fret}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

function Words() {
  const { key, title, note, lessonDay } = draft.value;
  return (
    <>
      <label class="field">
        <span class="label">Title</span>
        <input
          type="text"
          maxLength={80}
          value={title}
          placeholder={usualTitle(key)}
          onInput={(event) => change({ title: event.currentTarget.value })}
        />
      </label>
      <label class="field">
        <span class="label">A note to the student</span>
        <textarea
          maxLength={500}
          rows={2}
          // The browser itself brings only the line that is written in into sight.
          onFocus={(event) => event.currentTarget.scrollIntoView({ block: 'nearest' })}
          value={note}
          onInput={(event) => change({ note: event.currentTarget.value })}
        />
      </label>
      <label class="field">
        <span class="label">Next lesson</span>
        <input
          type="date"
          min={dayAfter(Date.now(), 0)}
          value={lessonDay ?? ''}
          onInput={(event) => change({ lessonDay: event.currentTarget.value || null })}
        />
      </label>
    </>
  );
}
