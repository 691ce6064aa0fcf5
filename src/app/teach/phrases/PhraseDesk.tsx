import { useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import type { MadePhrase } from '../../../making/draft.ts';
import { isBegun, taken, type Entry } from '../../../making/entry.ts';
import type { Explained } from '../../../making/explained.ts';
import { withPhrase, withPhraseChanged } from '../../../making/fitting.ts';
import { oddTime } from '../../../making/reading.ts';
import { rulingsMoved } from '../../../making/varied.ts';
import { useWide } from '../../../parts/lying.ts';
import { Sheet } from '../../../parts/Sheet.tsx';
import { sketchOf } from '../../../theory/editing.ts';
import type { Key } from '../../../theory/key.ts';
import type { Phrase } from '../../../theory/phrase.ts';
import { useFocusOnTitle } from '../../focus.ts';
import { PhraseSheet } from '../../phrases/PhraseSheet.tsx';
import { change, draft } from '../kept/openDraft.ts';
import { beginDraft } from '../kept/kept.ts';
import { Bench } from './Bench.tsx';
import { discarded } from './discarded.ts';
import { SHEETS, LEAF_NAMES, type Leaf } from './leaves.ts';
import { LeafContent, type LeafProps } from './Leaves.tsx';
import { MidiTold, useMidiFile } from './MidiFile.tsx';
import { useEntry, type Writing } from './useEntry.ts';
import '../../phrases/Phrases.css';
import './PhraseDesk.css';

/** A phrase in the making: tapped, typed or opened from a file, changed, and what it says. */
export function PhraseDesk({ leave }: { leave(): void }) {
  const writing = useEntry();
  const { entry, about, explained, set, edit } = writing;
  const [leaf, lay] = useState<Leaf | null>(null);
  const [group, setGroup] = useState<number | null>(null);
  const shown = group !== null && explained?.analysis.groups[group] ? group : null;
  const title = useFocusOnTitle();
  const wide = useWide();
  const keep = useKeeping(writing);
  // Here, so that a sheet which is closed takes no file with it that is still being read.
  const midi = useMidiFile(about.key, (phrase) => edit((now) => taken(now, sketchOf(phrase))));
  const fault = explained && faultOf(explained);
  const putIn = whole(writing) ? () => (put(writing), leave()) : null;
  const leaves = {
    ...writing,
    group: shown,
    show: setGroup,
    keep,
    midi,
    begin: beginIn,
    discard: () => (discard(entry), leave()),
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
      <Bench {...{ entry, about, explained, edit, set, lay }} group={shown} />
      {fault && (
        <p class="notice bad" role="status">
          {fault}
        </p>
      )}
      {!wide && leaf !== 'text' && (midi.reading || midi.said.length > 0) && (
        <div>
          <MidiTold midi={midi} />
        </div>
      )}
      {wide && <Beside {...leaves} />}
      {leaf && (
        <Sheet title={titleOf(leaf, entry)} close={() => (lay(null), midi.seen())}>
          <LeafContent {...leaves} leaf={leaf} />
          {leaf === 'text' && <PutIn use={putIn} />}
        </Sheet>
      )}
      {explained && <PhraseSheet explained={explained} />}
      <div class="last leaves">
        {!wide && <LeafButtons lay={lay} />}
        <PutIn use={putIn} />
      </div>
    </main>
  );
}

function titleOf(leaf: Leaf, { cursor }: Entry): string {
  return leaf === 'note' ? `Note ${cursor.at + 1}` : LEAF_NAMES[leaf];
}

/** Everything open side by side, in two columns. */
const COLUMNS = [
  ['text', 'note', 'more'],
  ['outlines', 'variations'],
] as const;

function Beside(props: Omit<LeafProps, 'leaf'>) {
  return COLUMNS.map((column) => (
    <div key={column[0]} class="beside-column">
      {column.map((leaf) => (
        <section key={leaf} class={`sheet beside ${leaf}`} aria-label={LEAF_NAMES[leaf]}>
          <h2>{LEAF_NAMES[leaf]}</h2>
          <LeafContent {...props} leaf={leaf} />
        </section>
      ))}
    </div>
  ));
}

function LeafButtons({ lay }: { lay(leaf: Leaf): void }) {
  return (
    <>
      {SHEETS.map((leaf) => (
        <button
          key={leaf}
          type="button"
          class="button small"
          aria-haspopup="dialog"
          aria-label={LEAF_NAMES[leaf]}
          onClick={() => lay(leaf)}
        >
          {leaf === 'variations' ? 'Vary' : LEAF_NAMES[leaf]}
        </button>
      ))}
    </>
  );
}

function PutIn({ use }: { use: (() => void) | null }) {
  return (
    <button
      type="button"
      class="button main"
      aria-label="Put it in the lesson"
      disabled={!use}
      onClick={() => use?.()}
    >
      Put it in
    </button>
  );
}

/** Whether what is written can go into the lesson as it stands. */
function whole({ read, settled, explained }: Writing): boolean {
  const bad = read !== null && 'faults' in read;
  return settled && !bad && explained?.places != null && oddTime(explained.phrase) === null;
}

/** What is written, as a phrase of the lesson. */
function madeOf({ entry: { rulings, hand }, explained }: Writing): MadePhrase {
  return { phrase: explained!.phrase, rulings, ...(hand && { hand }) };
}

/** Puts what is written into the lesson, in the place of what it changes, or as its last phrase. */
function put(writing: Writing): void {
  const { of } = writing.entry;
  const made = madeOf(writing);
  const next =
    of === null ? withPhrase(draft.value, made) : withPhraseChanged(draft.value, made, of);
  change({ ...next, entry: null });
}

function discard(entry: Entry): void {
  if (isBegun(entry)) discarded.value = { entry, phrases: draft.value.phrases };
  change({ entry: null });
}

/**
 * Puts variations of what is written into the lesson, behind it and those that were put in before: what is not in the
 * lesson yet goes in first.
 */
function useKeeping(writing: Writing): (phrase: Phrase) => number {
  const [behind, setBehind] = useState(0);
  return (phrase) => {
    const { entry } = writing;
    const isNew =
      entry.of === null && whole(writing) && draft.value.phrases.length + 2 <= MOST.phrases;
    if (isNew) change(withPhrase(draft.value, madeOf(writing)));
    const of = isNew ? draft.value.phrases.length - 1 : entry.of;
    const at = of === null ? draft.value.phrases.length : of + 1 + behind;
    setBehind(behind + 1);
    change(withPhrase(draft.value, { phrase, rulings: [] }, at));
    if (isNew) change({ entry: { ...draft.value.entry!, of } });
    return at + 1;
  };
}

/** Begins another lesson, in another key, with a phrase moved there; its rulings are those of the phrase before. */
function beginIn(key: Key, { phrase, rulings }: MadePhrase): void {
  const moved = { phrase, rulings: rulingsMoved(rulings, draft.value.key, key) };
  beginDraft({ ...draft.value, key, title: '', phrases: [moved], entry: null, taken: null });
}

/** What keeps the phrase from being played or put in, and what to do about it; null where nothing does. */
function faultOf({ phrase, places, fault }: Explained): string | null {
  const odd = oddTime(phrase);
  if (odd !== null)
    return `Note ${odd} comes at a time too fine to be kept: give the notes before it whole beats, halves, thirds or their parts.`;
  return fault && !places ? `${fault} Move it, or all notes by an octave.` : fault;
}
