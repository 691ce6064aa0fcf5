import { useEffect, useRef, useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import {
  atEnd,
  isFull,
  cursorMoved,
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
import type { WrittenFor } from '../../../making/reading.ts';
import { fretsLeft } from '../../../neck/instrument.ts';
import { midiAt, type Place } from '../../../neck/place.ts';
import { bringIntoSight } from '../../../parts/inSight.ts';
import { Neck } from '../../../parts/Neck.tsx';
import { PhraseStrip } from '../../../parts/PhraseStrip.tsx';
import { pluck } from '../../../sound/index.ts';
import { byOctaves, lengthen, unplace, type Sketch } from '../../../theory/editing.ts';
import type { Beats } from '../../../theory/rhythm.ts';
import { valueWords } from '../../../theory/value.ts';
import { dotsOf, stripOf } from '../../phrases/drawn.ts';
import { useHearing, type Hearing } from '../../phrases/hearing.ts';
import { withArticle } from '../../phrases/phraseWords.ts';
import { settings } from '../../state.ts';
import { ChosenNote, shifted } from './ChosenNote.tsx';
import { LengthChoice } from './LengthChoice.tsx';
import { Tool } from './Tool.tsx';

interface BenchProps {
  entry: Entry;
  about: WrittenFor;
  /** What is written; null where nothing is. */
  explained: Explained | null;
  /** The arpeggio to be shown by itself. */
  group: number | null;
  /** Changes what is written. */
  edit(change: (now: Entry) => Entry): void;
  /** Changes where the next note goes, or how long it is. */
  set(part: Partial<Entry>): void;
}

/** Where a phrase is written and changed: a strip with a cursor, and the neck to tap on. */
export function Bench({ entry, about, explained, group, edit, set }: BenchProps) {
  const [choosing, setChoosing] = useState(false);
  const hearing = useHearing(explained);
  const { cursor, sketch } = entry;
  const chosen = cursor.on === 'note' ? cursor.at : null;
  const go = (to: Cursor) => set({ cursor: to });
  useUndoKeys(edit);
  const tap = (place: Place) => {
    pluck(midiAt(about.instrument, place), place.string);
    if (!choosing) return edit((now) => tapped(now, place, about));
    const found = explained && noteAt(explained, place, cursor);
    if (found === null) return;
    setChoosing(false);
    go({ on: 'note', at: found });
  };
  return (
    <section class="bench" aria-label="The notes">
      <div
        role="toolbar"
        tabIndex={-1}
        aria-label="Note by note"
        onKeyDown={(event) => onKey(event, { entry, edit, go })}
      >
        <PhraseStrip
          notes={explained ? stripOf(explained) : []}
          strings={about.instrument.tuning.length}
          lit={hearing.lit}
          stretch={null}
          cursor={cursor}
          choose={(at) => go({ on: at < sketch.notes.length ? 'note' : 'gap', at })}
        />
      </div>
      <Tools {...{ entry, edit, hearing }} canBeHeard={explained !== null} />
      <LengthChoice
        legend={chosen === null ? 'The next note' : `Note ${chosen + 1}`}
        length={chosen === null ? entry.length : sketch.notes[chosen]!.length}
        set={(length) =>
          chosen === null
            ? set({ length })
            : edit((now) => step(now, { sketch: lengthen(now.sketch, chosen, length) }))
        }
      />
      <TapMeaning {...{ entry, choosing }} choose={explained && setChoosing} />
      <BenchNeck {...{ explained, about, group, tap }} lit={hearing.lit ?? chosen} />
      {explained && chosen !== null && <ChosenNote {...{ entry, explained, edit, go }} />}
      {explained && <AllNotes length={entry.length} edit={edit} />}
    </section>
  );
}

interface Controls extends Pick<BenchProps, 'entry' | 'edit'> {
  go(to: Cursor): void;
}

/** Arrows, Home and End move the cursor, arrows with Shift its note; Delete takes that out. */
function onKey(event: KeyboardEvent, { entry, edit, go }: Controls): void {
  const { sketch, cursor } = entry;
  const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key] as 1 | -1 | undefined;
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (by && event.shiftKey && cursor.on === 'note') edit((now) => shifted(now, by));
  else if (by) go(cursorMoved(entry, by));
  else if (event.key === 'Home' && sketch.notes.length > 0) go({ on: 'note', at: 0 });
  else if (event.key === 'End') go(atEnd(sketch));
  else if (event.key === 'Delete' || event.key === 'Backspace') edit(removed);
  else return;
  event.preventDefault();
}

interface ToolsProps extends Pick<BenchProps, 'entry' | 'edit'> {
  hearing: Hearing;
  canBeHeard: boolean;
}

function Tools({ entry, edit, hearing, canBeHeard }: ToolsProps) {
  const { sketch, undo, redo } = entry;
  const isEmpty = sketch.notes.length === 0 && sketch.lead.n === 0;
  return (
    <div class="row">
      <Tool name="Undo" disabled={undo.length === 0} use={() => edit(undone)} />
      <Tool name="Redo" disabled={redo.length === 0} use={() => edit(redone)} />
      <Tool name="Rest" use={() => edit(rested)} />
      <Tool name="Delete" disabled={isEmpty} use={() => edit(removed)} />
      <Tool
        name={hearing.playing ? 'Stop' : 'Hear'}
        disabled={!canBeHeard}
        use={() => hearing.toggle()}
      />
    </div>
  );
}

interface TapMeaningProps extends Pick<BenchProps, 'entry'> {
  choosing: boolean;
  /** Lets the next tap choose a note, or write again; null where there is none to choose. */
  choose: ((choosing: boolean) => void) | null;
}

/** What the next tap on the neck does. */
function TapMeaning({ entry, choosing, choose }: TapMeaningProps) {
  return (
    <div class="tap">
      <p class="soft" role="status">
        {choosing ? 'A tap chooses a note.' : tapWords(entry)}
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
        dots={explained ? dotsOf(explained, group) : []}
        lit={place}
        tap={tap}
      />
    </div>
  );
}

/** What is done to every note at once. */
function AllNotes({ length, edit }: { length: Beats; edit: BenchProps['edit'] }) {
  const all = (change: (sketch: Sketch) => Sketch) => () =>
    edit((now) => step(now, { sketch: change(now.sketch) }));
  const asLong = (sketch: Sketch) =>
    sketch.notes.reduce((changed, _, i) => lengthen(changed, i, length), sketch);
  return (
    <details class="all-notes">
      <summary>All notes</summary>
      <div class="groups">
        <Tool name={`Make each ${withArticle(valueWords(length))}`} use={all(asLong)} />
        <Tool name="Find the easiest places" use={all((sketch) => unplace(sketch))} />
        <Tool name="An octave lower" use={all((sketch) => byOctaves(sketch, -1))} />
        <Tool name="An octave higher" use={all((sketch) => byOctaves(sketch, 1))} />
      </div>
    </details>
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

/** Ctrl or ⌘ with Z takes back, with Shift does again; text fields have that of their own. */
function useUndoKeys(edit: BenchProps['edit']) {
  const latest = useRef(edit);
  latest.current = edit;
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      const writing = (event.target as Element).matches(
        'textarea, input[type=text], [type=number]',
      );
      if (writing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
      event.preventDefault();
      latest.current(event.shiftKey ? redone : undone);
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, []);
}
