import { useEffect, useRef, useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import {
  isFull,
  redone,
  removed,
  rested,
  step,
  tapped,
  undone,
  type Cursor,
  type Entry,
} from '../../../making/entry.ts';
import type { Explained } from '../../../making/explained.ts';
import { fretsLeft } from '../../../neck/instrument.ts';
import { midiAt, type Place } from '../../../neck/place.ts';
import { bringIntoSight } from '../../../parts/inSight.ts';
import { Neck } from '../../../parts/Neck.tsx';
import { NoteGlyph } from '../../../parts/NoteGlyph.tsx';
import { PhraseStrip } from '../../../parts/PhraseStrip.tsx';
import { pluck } from '../../../sound/index.ts';
import { lengthen } from '../../../theory/editing.ts';
import { valueWords } from '../../../theory/value.ts';
import { phraseDots, stripOf } from '../../phrases/drawn.ts';
import { usePhraseHearing, type Hearing } from '../../phrases/hearing.ts';
import { withArticle } from '../../phrases/phraseWords.ts';
import { settings } from '../../state.ts';
import type { Leaf } from './leaves.ts';
import { LengthChoice } from './LengthChoice.tsx';
import { Tool } from './Tool.tsx';
import type { Writing } from './useEntry.ts';
import { useDeskKeys } from './useKeys.ts';

interface BenchProps extends Pick<Writing, 'entry' | 'about' | 'explained' | 'edit' | 'set'> {
  /** The arpeggio to be shown by itself. */
  group: number | null;
  /** Lays a leaf over the desk. */
  lay(leaf: Leaf): void;
}

/** Where a phrase is written and changed: a strip with a cursor, one row of tools, and the neck to tap on. */
export function Bench({ entry, about, explained, group, edit, set, lay }: BenchProps) {
  const [choosing, setChoosing] = useState(false);
  const hearing = usePhraseHearing(explained);
  const { cursor, sketch } = entry;
  const chosen = cursor.on === 'note' ? cursor.at : null;
  const string = useDeskKeys({
    entry,
    about,
    edit,
    set,
    hear: hearing.toggle,
    list: () => lay('keys'),
  });
  const tap = (place: Place) => {
    pluck(midiAt(about.instrument, place), place.string);
    if (!choosing) return edit((now) => tapped(now, place, about));
    const found = explained && noteAt(explained, place, cursor);
    if (found === null) return;
    setChoosing(false);
    set({ cursor: { on: 'note', at: found } });
  };
  return (
    <section class="bench" aria-label="The notes">
      <div role="toolbar" tabIndex={-1} aria-label="Note by note">
        <PhraseStrip
          notes={explained ? stripOf(explained) : []}
          strings={about.instrument.tuning.length}
          lit={hearing.lit}
          stretch={null}
          cursor={cursor}
          choose={(at) => set({ cursor: { on: at < sketch.notes.length ? 'note' : 'gap', at } })}
        />
      </div>
      <Tools {...{ entry, edit, hearing, lay }} canBeHeard={explained !== null} />
      <div class="lengths-in-place">
        <Lengths {...{ entry, edit, set }} />
      </div>
      <TapMeaning {...{ entry, choosing, string }} choose={explained && setChoosing} />
      <BenchNeck {...{ explained, about, group, tap }} lit={hearing.lit ?? chosen} />
    </section>
  );
}

/** How long the cursor's note is, or the next one. */
export function Lengths({ entry, edit, set }: Pick<BenchProps, 'entry' | 'edit' | 'set'>) {
  const { cursor, sketch } = entry;
  const chosen = cursor.on === 'note' ? cursor.at : null;
  return (
    <LengthChoice
      legend={chosen === null ? 'The next note' : `Note ${chosen + 1}`}
      length={lengthAt(entry)}
      set={(length) =>
        chosen === null
          ? set({ length })
          : edit((now) => step(now, { sketch: lengthen(sketch, chosen, length) }))
      }
    />
  );
}

function lengthAt({ cursor, sketch, length }: Entry) {
  return cursor.on === 'note' ? sketch.notes[cursor.at]!.length : length;
}

interface ToolsProps extends Pick<BenchProps, 'entry' | 'edit' | 'lay'> {
  hearing: Hearing;
  canBeHeard: boolean;
}

function Tools({ entry, edit, lay, hearing, canBeHeard }: ToolsProps) {
  const { sketch, cursor, undo, redo } = entry;
  const isEmpty = sketch.notes.length === 0 && sketch.lead.n === 0;
  return (
    <div class="row tools" role="group" aria-label="Tools">
      <button
        type="button"
        class="button small length-tool"
        aria-label={`Length: ${valueWords(lengthAt(entry))}`}
        onClick={() => lay('length')}
      >
        <NoteGlyph length={lengthAt(entry)} />
      </button>
      <Tool name="Rest" use={() => edit(rested)} />
      <Tool name="Delete" disabled={isEmpty} use={() => edit(removed)} />
      <Tool name="Undo" disabled={undo.length === 0} use={() => edit(undone)} />
      <Tool name="Redo" disabled={redo.length === 0} use={() => edit(redone)} />
      <Tool
        name={hearing.playing ? 'Stop' : 'Hear'}
        disabled={!canBeHeard}
        use={() => hearing.toggle()}
      />
      <button
        type="button"
        class="button small note-tool"
        aria-label="Change this note"
        disabled={cursor.on !== 'note'}
        onClick={() => lay('note')}
      >
        Note
      </button>
      <button
        type="button"
        class="button small keys-tool"
        aria-label="The keys that write notes"
        aria-keyshortcuts="?"
        onClick={() => lay('keys')}
      >
        Keys ?
      </button>
    </div>
  );
}

interface TapMeaningProps extends Pick<BenchProps, 'entry'> {
  choosing: boolean;
  /** The string that digits are for; null until the keyboard chose one. */
  string: number | null;
  /** Lets the next tap choose a note, or write again; null where there is none to choose. */
  choose: ((choosing: boolean) => void) | null;
}

/** What the next tap on the neck does. */
function TapMeaning({ entry, choosing, string, choose }: TapMeaningProps) {
  return (
    <div class="tap">
      <p class="soft" role="status">
        {choosing ? 'A tap chooses a note.' : tapWords(entry)}
        {string !== null && ` Digits: string ${string}.`}
      </p>
      {choose && (
        <button
          type="button"
          class="button small"
          aria-label="Choose a note on the neck"
          aria-pressed={choosing}
          onClick={() => choose(!choosing)}
        >
          Choose
        </button>
      )}
    </div>
  );
}

interface BenchNeckProps extends Pick<BenchProps, 'explained' | 'about' | 'group'> {
  lit: number | null;
  tap(place: Place): void;
}

/** The whole neck in a frame that scrolls to what is heard or changed. */
function BenchNeck({ explained, about, group, lit, tap }: BenchNeckProps) {
  const frame = useRef<HTMLDivElement>(null);
  const places = explained?.places ?? [];
  const place = lit === null ? null : (places[lit] ?? null);
  const shown = place ?? places.at(-1);
  useEffect(() => {
    if (!shown) return;
    const { string, fret } = shown;
    const cell = `[data-string="${string}"][data-fret="${fret}"]`;
    bringIntoSight(frame.current!, frame.current!.querySelector<HTMLElement>(cell)!);
  }, [shown?.string, shown?.fret]);
  return (
    <div class="phrase-neck" ref={frame}>
      <Neck
        instrument={about.instrument}
        musicKey={about.key}
        naming={settings.value.naming}
        frets={[0, fretsLeft(about.instrument)]}
        label="Neck to write on"
        dots={explained ? phraseDots(explained, group) : []}
        lit={place}
        tap={tap}
      />
    </div>
  );
}

/** `A tap adds a triplet eighth at the end.` */
function tapWords(entry: Entry): string {
  const { cursor, sketch, length } = entry;
  if (cursor.on === 'note') return `A tap moves note ${cursor.at + 1}.`;
  if (isFull(entry)) return `A phrase has at most ${MOST.notes} notes.`;
  const where = cursor.at === sketch.notes.length ? 'at the end' : `before note ${cursor.at + 1}`;
  return `A tap adds ${withArticle(valueWords(length))} ${where}.`;
}

/** The note at a place, the next one after the cursor's where it comes several times; null where there is none. */
function noteAt({ places }: Explained, { string, fret }: Place, cursor: Cursor): number | null {
  const there = (places ?? []).flatMap((place, i) =>
    place.string === string && place.fret === fret ? [i] : [],
  );
  const from = cursor.on === 'note' ? cursor.at : -1;
  return there.find((index) => index > from) ?? there[0] ?? null;
}
