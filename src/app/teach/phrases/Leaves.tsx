import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { titleOf, type MadePhrase } from '../../../making/draft.ts';
import { step } from '../../../making/entry.ts';
import { soundingOf, type Explained } from '../../../making/explained.ts';
import { textOf } from '../../../making/reading.ts';
import { PhrasePlayer } from '../../../parts/PhrasePlayer.tsx';
import type { Key } from '../../../theory/key.ts';
import type { Phrase } from '../../../theory/phrase.ts';
import { stripOf } from '../../phrases/drawn.ts';
import { GroupChoice } from '../../phrases/GroupChoice.tsx';
import { PhraseOut } from '../../phrases/PhraseOut.tsx';
import {
  embellishmentWords,
  motionWords,
  outlineWords,
  travelWords,
} from '../../phrases/phraseWords.ts';
import { settings } from '../../state.ts';
import { TempoField } from '../../TempoField.tsx';
import { draft } from '../kept/openDraft.ts';
import { AllNotes } from './AllNotes.tsx';
import { Lengths } from './Bench.tsx';
import { ChosenNote } from './ChosenNote.tsx';
import { HandChoices } from './HandChoices.tsx';
import { KEY_WORDS } from './keys.ts';
import type { Leaf } from './leaves.ts';
import { MidiFile, type MidiOpening } from './MidiFile.tsx';
import { Readings } from './Readings.tsx';
import { TextField } from './TextField.tsx';
import type { Writing } from './useEntry.ts';
import { Variations } from './Variations.tsx';

export interface LeafProps extends Writing {
  leaf: Leaf;
  midi: MidiOpening;
  /** The arpeggio that is shown by itself, or null. */
  group: number | null;
  show(group: number | null): void;
  /** Puts a variation into the lesson, behind what it was made of; tells the number it has there. */
  keep(phrase: Phrase): number;
  /** Begins another lesson, in another key, with a phrase. */
  begin(key: Key, made: MadePhrase): void;
  /** Throws away what is written, and goes. */
  discard(): void;
}

/** One side of the phrase: its text, what it outlines, what can be made of it, and the rest. */
export function LeafContent(props: LeafProps): ComponentChildren {
  const { leaf, entry, explained, edit, set } = props;
  switch (leaf) {
    case 'length':
      return <Lengths {...{ entry, edit, set }} />;
    case 'note':
      return explained && entry.cursor.on === 'note' ? (
        <ChosenNote {...{ entry, explained, edit }} go={(cursor) => set({ cursor })} />
      ) : (
        <p class="soft">Tap a note of the strip to change it.</p>
      );
    case 'text':
      return <Text {...props} />;
    case 'outlines':
      return <Outlines {...props} />;
    case 'variations':
      return <Varied {...props} />;
    case 'more':
      return <More {...props} />;
    case 'keys':
      return <Keys />;
  }
}

const NOTHING = <p class="soft">Nothing is written yet.</p>;

function Text({ entry, about, read, explained, set, midi }: LeafProps) {
  return (
    <>
      <TextField
        text={entry.text ?? textOf(explained)}
        read={entry.text === null ? null : read}
        instrument={about.instrument}
        type={(typed) => set({ text: typed })}
        letGo={explained && (() => set({ text: null }))}
      />
      <MidiFile midi={midi} />
    </>
  );
}

/** What the phrase outlines, how it moves and where it goes. */
function Outlines({ entry, explained, edit, group, show }: LeafProps) {
  if (!explained) return NOTHING;
  return (
    <>
      <p class="outline">
        {outlineWords(explained, settings.value)} {embellishmentWords(explained)}
      </p>
      <p class="soft">
        {motionWords(explained)} {travelWords(explained)}
      </p>
      <GroupChoice groups={explained.analysis.groups} shown={group} show={show} />
      <Readings
        explained={explained}
        rulings={entry.rulings}
        rule={(rulings) => edit((now) => step(now, { rulings }))}
      />
    </>
  );
}

function Varied({ entry, explained, keep, begin }: LeafProps) {
  if (!explained) return NOTHING;
  return (
    <Variations
      explained={explained}
      kept={draft.value.phrases.length}
      keep={keep}
      begin={(key, phrase) => begin(key, { phrase, rulings: entry.rulings })}
    />
  );
}

function More({ entry, explained, edit, discard }: LeafProps) {
  return (
    <>
      <TempoField
        tempo={entry.sketch.tempo}
        set={(tempo) => edit((now) => step(now, { sketch: { ...now.sketch, tempo } }))}
      />
      <HandChoices {...{ entry, explained, edit }} />
      {explained && (
        <>
          <AllNotes {...{ entry, edit }} />
          <SlowPlayer explained={explained} />
          <PhraseOut explained={explained} title={titleOf(draft.value)} />
        </>
      )}
      <button type="button" class="button small" onClick={discard}>
        {entry.of === null ? 'Throw away' : 'Leave it as it was'}
      </button>
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

function Keys() {
  return (
    <dl class="facts keys">
      {KEY_WORDS.map(([keys, does]) => (
        <>
          <dt>{keys}</dt>
          <dd>{does}</dd>
        </>
      ))}
    </dl>
  );
}
