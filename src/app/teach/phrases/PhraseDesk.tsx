import { useState } from 'preact/hooks';
import { titleOf, type MadePhrase } from '../../../making/draft.ts';
import { isBegun, step, taken } from '../../../making/entry.ts';
import { soundingOf, type Explained } from '../../../making/explained.ts';
import { oddTime, textOf } from '../../../making/reading.ts';
import { rulingsMoved } from '../../../making/varied.ts';
import { PhrasePlayer } from '../../../parts/PhrasePlayer.tsx';
import { sketchOf } from '../../../theory/editing.ts';
import type { Key } from '../../../theory/key.ts';
import { useFocusOnTitle } from '../../focus.ts';
import { stripOf } from '../../phrases/drawn.ts';
import { GroupChoice } from '../../phrases/GroupChoice.tsx';
import { PhraseOut } from '../../phrases/PhraseOut.tsx';
import { PhraseSheet } from '../../phrases/PhraseSheet.tsx';
import {
  embellishmentWords,
  motionWords,
  outlineWords,
  travelWords,
} from '../../phrases/phraseWords.ts';
import { settings } from '../../state.ts';
import { TempoField } from '../../TempoField.tsx';
import { change, draft } from '../kept/form.ts';
import { begin } from '../kept/kept.ts';
import { Bench } from './Bench.tsx';
import { discarded } from './discarded.ts';
import { HandChoices } from './HandChoices.tsx';
import { MidiFile } from './MidiFile.tsx';
import { Readings } from './Readings.tsx';
import { TextField } from './TextField.tsx';
import { useEntry, type Writing } from './useEntry.ts';
import { Variations } from './Variations.tsx';
import '../../phrases/Phrases.css';
import './PhraseDesk.css';

/** A phrase in the making: tapped, typed or opened from a file, changed, and what it says. */
export function PhraseDesk({ leave }: { leave(): void }) {
  const writing = useEntry();
  const { entry, about, read, explained, set, edit } = writing;
  const [group, setGroup] = useState<number | null>(null);
  const shown = group !== null && explained?.analysis.groups[group] ? group : null;
  const title = useFocusOnTitle();
  const fault = explained && faultOf(explained);
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
      <HandChoices {...{ entry, explained, edit }} />
      <TempoField
        tempo={entry.sketch.tempo}
        set={(tempo) => edit((now) => step(now, { sketch: { ...now.sketch, tempo } }))}
      />
      <TextField
        text={entry.text ?? textOf(explained)}
        read={entry.text === null ? null : read}
        instrument={about.instrument}
        type={(typed) => set({ text: typed })}
        letGo={explained && (() => set({ text: null }))}
      />
      <MidiFile
        musicKey={about.key}
        opened={(phrase) => edit((now) => taken(now, sketchOf(phrase)))}
      />
      {explained && <WrittenPhrase {...{ entry, explained, edit, shown }} show={setGroup} />}
      <Decision {...writing} leave={leave} />
    </main>
  );
}

interface WrittenPhraseProps extends Pick<Writing, 'entry' | 'edit'> {
  explained: Explained;
  /** The arpeggio that is shown by itself, or null. */
  shown: number | null;
  show(group: number | null): void;
}

/** What the written phrase says, how it sounds, and what can be made of it. */
function WrittenPhrase({ entry, explained, edit, shown, show }: WrittenPhraseProps) {
  return (
    <>
      <Said explained={explained} />
      <GroupChoice groups={explained.analysis.groups} shown={shown} show={show} />
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
        keep={(phrase) => change({ phrases: [...draft.value.phrases, { phrase, rulings: [] }] })}
        begin={(key, phrase) => beginIn(key, { phrase, rulings: entry.rulings })}
      />
      <PhraseSheet explained={explained} />
    </>
  );
}

/** Begins another lesson, in another key, with a phrase moved there; its rulings are those of the phrase before. */
function beginIn(key: Key, { phrase, rulings }: MadePhrase): void {
  const moved = { phrase, rulings: rulingsMoved(rulings, draft.value.key, key) };
  begin({ ...draft.value, key, title: '', phrases: [moved], entry: null });
}

interface DecisionProps extends Pick<Writing, 'entry' | 'read' | 'settled' | 'explained'> {
  leave(): void;
}

/** Into the lesson with it, or away. */
function Decision({ entry, read, settled, explained, leave }: DecisionProps) {
  const bad = read !== null && 'faults' in read;
  const whole = explained?.places && oddTime(explained.phrase) === null;
  const keep = () => {
    if (!explained) return;
    const { rulings, hand } = entry;
    const made = { phrase: explained.phrase, rulings, ...(hand && { hand }) };
    const { phrases } = draft.value;
    change({
      phrases: entry.of === null ? [...phrases, made] : phrases.with(entry.of, made),
      entry: null,
    });
    leave();
  };
  const discard = () => {
    if (isBegun(entry)) discarded.value = { entry, phrases: draft.value.phrases };
    change({ entry: null });
    leave();
  };
  return (
    <div class="buttons last">
      <button type="button" class="button" onClick={discard}>
        {entry.of === null ? 'Throw away' : 'Leave it as it was'}
      </button>
      <button type="button" class="button main" disabled={!settled || bad || !whole} onClick={keep}>
        Put it in the lesson
      </button>
    </div>
  );
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
