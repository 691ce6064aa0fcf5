import { useEffect, useMemo } from 'preact/hooks';
import type { TablatureRead } from '../../../decks/notation/tablature-reader.ts';
import { TEMPO } from '../../../making/draft.ts';
import { newEntry, type Entry } from '../../../making/entry.ts';
import { explained as explain, type Explained } from '../../../making/explained.ts';
import {
  readUpToNow,
  changed,
  readText,
  writtenPhrase,
  type WrittenFor,
} from '../../../making/reading.ts';
import { change, draft } from '../kept/openDraft.ts';
import { useSettled } from './TextField.tsx';

const NEW = newEntry(TEMPO);

/** The phrase that is being written in the form's lesson. */
export interface Writing {
  readonly entry: Entry;
  readonly about: WrittenFor;
  /** What its text says; null where it has none. */
  readonly read: TablatureRead | null;
  /** Whether the text was read as it stands now. */
  readonly settled: boolean;
  /** What is written; null where nothing is. */
  readonly explained: Explained | null;
  /** Changes where the next note goes, how long it is, or the text. */
  set(part: Partial<Entry>): void;
  /** Changes what is written. */
  edit(how: (now: Entry) => Entry): void;
}

export function useEntry(): Writing {
  const entry = latest();
  const { key, instrument } = draft.value;
  const about = useMemo(() => ({ key, instrument }), [key, instrument]);
  const text = useSettled(entry.text);
  const settled = text === entry.text;
  const read = useMemo(
    () => readText({ ...entry, text }, about),
    [text, entry.length, entry.sketch.tempo, about],
  );
  // What can be read is what is written.
  useEffect(() => {
    const next = settled && read ? readUpToNow(latest(), about) : latest();
    if (next !== latest()) set(next);
  }, [read, settled]);
  const explained = useMemo(() => {
    const phrase = writtenPhrase(entry.sketch, about);
    return phrase.notes.length === 0
      ? null
      : explain(phrase, about, entry.rulings, entry.hand ?? undefined);
  }, [entry.sketch, entry.rulings, entry.hand, about]);
  const edit = (how: (now: Entry) => Entry) => {
    const next = changed(latest(), about, how);
    if (next !== latest()) set(next);
  };
  return { entry, about, read, settled, explained, set, edit };
}

/** The entry as it is now: what is done to it may come before the screen is drawn again. */
function latest(): Entry {
  return draft.value.entry ?? NEW;
}

function set(part: Partial<Entry>): void {
  change({ entry: { ...latest(), ...part } });
}
