import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { titleOf, TEMPO } from '../../../making/draft.ts';
import { isBegun, newEntry, step, taken, type Entry } from '../../../making/entry.ts';
import { explained as explain, soundingOf, type Explained } from '../../../making/explained.ts';
import {
  caughtUp,
  changed,
  oddTime,
  readText,
  textOf,
  writtenPhrase,
} from '../../../making/reading.ts';
import { rulingsMoved } from '../../../making/varied.ts';
import { PhrasePlayer } from '../../../parts/PhrasePlayer.tsx';
import { sketchOf } from '../../../theory/editing.ts';
import { stripOf } from '../../phrases/drawn.ts';
import { GroupChoice } from '../../phrases/GroupChoice.tsx';
import { PhraseOut } from '../../phrases/PhraseOut.tsx';
import { PhraseSheet } from '../../phrases/PhraseSheet.tsx';
import { embellishmentWords, motionWords, outlineWords, travelWords } from '../../phrases/words.ts';
import { settings } from '../../state.ts';
import { TempoField } from '../../TempoField.tsx';
import { change, draft } from '../kept/form.ts';
import { begin } from '../kept/kept.ts';
import { Bench } from './Bench.tsx';
import { thrown } from './discarded.ts';
import { MidiFile } from './MidiFile.tsx';
import { Readings } from './Readings.tsx';
import { TextField, useSettled } from './TextField.tsx';
import { Variations } from './Variations.tsx';
import '../../phrases/Phrases.css';

const NEW = newEntry(TEMPO);

/** A phrase in the making: tapped, typed or opened from a file, changed, and what it says. */
export function PhraseDesk({ leave }: { leave(): void }) {
  const entry = draft.value.entry ?? NEW;
  const { key, instrument } = draft.value;
  const about = useMemo(() => ({ key, instrument }), [key, instrument]);
  const set = (part: Partial<Entry>) => change({ entry: { ...latest(), ...part } });
  const edit = (how: (now: Entry) => Entry) => {
    const next = changed(latest(), about, how);
    if (next !== latest()) set(next);
  };
  const text = useSettled(entry.text);
  const read = useMemo(
    () => readText({ ...entry, text }, about),
    [text, entry.length, entry.sketch.tempo, about],
  );
  const settled = text === entry.text;
  // What can be read is what is written.
  useEffect(() => {
    const next = settled && read ? caughtUp(latest(), about) : latest();
    if (next !== latest()) set(next);
  }, [read, settled]);
  const explained = useMemo(() => {
    const phrase = writtenPhrase(entry.sketch, about);
    return phrase.notes.length === 0 ? null : explain(phrase, about, entry.rulings);
  }, [entry.sketch, entry.rulings, about]);
  const [group, setGroup] = useState<number | null>(null);
  const shown = group !== null && explained?.analysis.groups[group] ? group : null;

  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus();
  }, []);

  const fault = explained && faultOf(explained);
  const bad = read !== null && 'faults' in read;
  const whole = explained?.places && oddTime(explained.phrase) === null;
  const keep = () => {
    if (!explained) return;
    const made = { phrase: explained.phrase, rulings: entry.rulings };
    const { phrases } = draft.value;
    change({
      phrases: entry.of === null ? [...phrases, made] : phrases.with(entry.of, made),
      entry: null,
    });
    leave();
  };
  const drop = () => {
    if (isBegun(entry)) thrown.value = { entry, phrases: draft.value.phrases };
    change({ entry: null });
    leave();
  };
  return (
    <main class="screen phrase desk">
      <header>
        <h1 ref={title} tabIndex={-1}>
          {entry.of === null ? 'A phrase' : `Phrase ${entry.of + 1}`}
        </h1>
        <button type="button" class="button small" onClick={leave}>
          Back to the lesson
        </button>
      </header>
      <Bench {...{ entry, about, explained, edit, set }} group={shown} />
      {fault && (
        <p class="notice bad" role="status">
          {fault}
        </p>
      )}
      <TempoField
        tempo={entry.sketch.tempo}
        set={(tempo) => edit((now) => step(now, { sketch: { ...now.sketch, tempo } }))}
      />
      <TextField
        text={entry.text ?? textOf(explained)}
        read={entry.text === null ? null : read}
        instrument={instrument}
        type={(typed) => set({ text: typed })}
        letGo={explained && (() => set({ text: null }))}
      />
      <MidiFile musicKey={key} opened={(phrase) => edit((now) => taken(now, sketchOf(phrase)))} />
      {explained && (
        <>
          <Said explained={explained} />
          <GroupChoice groups={explained.analysis.groups} shown={shown} show={setGroup} />
          <Readings
            explained={explained}
            rulings={entry.rulings}
            rule={(rulings) => edit((now) => step(now, { rulings }))}
          />
          <SlowPlayer explained={explained} />
          <PhraseOut explained={explained} title={titleOf(draft.value)} />
          <Variations
            explained={explained}
            kept={draft.value.phrases.length}
            keep={(phrase) =>
              change({ phrases: [...draft.value.phrases, { phrase, rulings: [] }] })
            }
            begin={(other, phrase) => {
              const rulings = rulingsMoved(entry.rulings, key, other);
              begin({
                ...draft.value,
                key: other,
                title: '',
                phrases: [{ phrase, rulings }],
                entry: null,
              });
            }}
          />
          <PhraseSheet explained={explained} />
        </>
      )}
      <div class="buttons last">
        <button type="button" class="button" onClick={drop}>
          {entry.of === null ? 'Throw away' : 'Leave it as it was'}
        </button>
        <button
          type="button"
          class="button main"
          disabled={!settled || bad || !whole}
          onClick={keep}
        >
          Put it in the lesson
        </button>
      </div>
    </main>
  );
}

/** The entry as it is now: what is done to it may come before the screen is drawn again. */
function latest(): Entry {
  return draft.value.entry ?? NEW;
}

/** What keeps the phrase from being played or put in, and what to do about it; null where nothing does. */
function faultOf({ phrase, places, fault }: Explained): string | null {
  const odd = oddTime(phrase);
  if (odd !== null)
    return `Note ${odd} comes at a time too fine to be kept: give the notes before it whole beats, halves, thirds or their parts.`;
  return fault && !places ? `${fault} Move it, or all notes by an octave.` : fault;
}

/** What the phrase outlines, how it moves and where it goes. */
function Said({ explained }: { explained: Explained }) {
  return (
    <>
      <p class="outline">
        {outlineWords(explained, settings.value)} {embellishmentWords(explained)}
      </p>
      <p class="soft">
        {motionWords(explained)} {travelWords(explained)}
      </p>
    </>
  );
}

function SlowPlayer({ explained }: { explained: Explained }) {
  const [open, setOpen] = useState(false);
  const { places, phrase, instrument, analysis } = explained;
  if (!places) return null;
  return (
    <details class="slow" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Slowly, in a loop, with a click</summary>
      {open && (
        <PhrasePlayer
          key={String(phrase.tempo)}
          sounding={soundingOf(explained)}
          strings={instrument.tuning.length}
          notes={stripOf(explained)}
          groups={analysis.groups.map(({ from }) => from)}
        />
      )}
    </details>
  );
}
