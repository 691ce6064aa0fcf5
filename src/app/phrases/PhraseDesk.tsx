import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Remark } from '../../decks/notation/remark.ts';
import { labelsOf } from '../../decks/notation/tablature.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { FASTEST, SLOWEST } from '../../sound/index.ts';
import { beats, compare, type Beats } from '../../theory/rhythm.ts';
import { change, draft, titleOf, TEMPO, TRIPLET, type Entry } from '../teach/draft.ts';
import { keptRulings, readEntry, type EntryRead } from './entry.ts';
import { MidiFile } from './MidiFile.tsx';
import { PhraseOut } from './PhraseOut.tsx';
import { PhraseView } from './PhraseView.tsx';
import { Readings } from './Readings.tsx';
import { Variations } from './Variations.tsx';
import { motionWords, travelWords } from './words.ts';
import './Phrases.css';

const LENGTHS: readonly (readonly [Beats, string])[] = [
  [TRIPLET, 'triplets'],
  [beats(1, 2), 'eighths'],
  [beats(1, 4), 'sixteenths'],
  [beats(1), 'quarters'],
];

const NEW: Entry = { text: '', length: TRIPLET, tempo: TEMPO, rulings: [], of: null };

/** A phrase in the making: tablature as one writes it, and what it says. */
export function PhraseDesk({ leave }: { leave(): void }) {
  const entry = draft.value.entry ?? NEW;
  const { key, instrument } = draft.value;
  const set = (part: Partial<Entry>) => change({ entry: { ...entry, ...part } });
  const text = useSettled(entry.text);
  const read = useMemo(
    () => readEntry({ ...entry, text }, { key, instrument }),
    [text, entry.length, entry.tempo, entry.rulings, key, instrument],
  );
  const field = useRef<HTMLTextAreaElement>(null);
  const current = text === entry.text;
  useRulingsFollow(read, (rulings) => set({ rulings }), entry.rulings);

  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus();
  }, []);

  const keep = () => {
    if (read.state !== 'phrase') return;
    const { phrase } = read.explained;
    const made = { phrase, rulings: entry.rulings };
    const { phrases } = draft.value;
    change({
      phrases: entry.of === null ? [...phrases, made] : phrases.with(entry.of, made),
      entry: null,
    });
    leave();
  };
  const drop = () => {
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
      <Choices legend="Notes are">
        {LENGTHS.map(([length, name]) => (
          <Choice
            key={name}
            name="length"
            label={name}
            checked={compare(length, entry.length) === 0}
            change={() => set({ length })}
          />
        ))}
      </Choices>
      <Tempo tempo={entry.tempo} set={(tempo) => set({ tempo })} />
      <label class="field">
        <span class="label">Tablature, string 1 on top</span>
        <textarea
          ref={field}
          class="tablature"
          rows={instrument.tuning.length + 2}
          spellcheck={false}
          autocapitalize="off"
          autocomplete="off"
          wrap="off"
          maxLength={20_000}
          placeholder={exampleFor(labelsOf(instrument))}
          aria-invalid={read.state === 'faults'}
          value={entry.text}
          onInput={(event) => set({ text: event.currentTarget.value })}
        />
      </label>
      <MidiFile
        musicKey={key}
        instrument={instrument}
        opened={(opened, tempo) => set({ text: opened, tempo, rulings: [] })}
      />
      <Told
        read={read}
        show={({ line, column }) => {
          const at = entry.text.split('\n').slice(0, line - 1);
          const from = at.reduce((sum, row) => sum + row.length + 1, column - 1);
          field.current?.focus();
          field.current?.setSelectionRange(from, from + 1);
        }}
      />
      {read.state === 'phrase' && (
        <>
          <PhraseView explained={read.explained} />
          <Readings
            explained={read.explained}
            rulings={entry.rulings}
            rule={(rulings) => set({ rulings })}
          />
          <p class="soft">
            {motionWords(read.explained)} {travelWords(read.explained)}
          </p>
          <PhraseOut explained={read.explained} title={titleOf(draft.value)} />
          <Variations
            explained={read.explained}
            kept={draft.value.phrases.length}
            keep={(phrase) =>
              change({ phrases: [...draft.value.phrases, { phrase, rulings: [] }] })
            }
          />
        </>
      )}
      <div class="buttons last">
        <button type="button" class="button" onClick={drop}>
          {entry.of === null ? 'Throw away' : 'Leave it as it was'}
        </button>
        <button
          type="button"
          class="button main"
          disabled={!current || read.state !== 'phrase'}
          onClick={keep}
        >
          Put it in
        </button>
      </div>
    </main>
  );
}

/** A text once it has stood for a moment, so that nothing is worked out between two keys. */
function useSettled(text: string): string {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), 250);
    return () => clearTimeout(timer);
  }, [text]);
  return settled;
}

/** Rulings stay with their notes when others come or go. */
function useRulingsFollow(
  read: EntryRead,
  set: (rulings: Entry['rulings']) => void,
  rulings: Entry['rulings'],
) {
  const phrase = read.state === 'phrase' ? read.explained.phrase : null;
  const before = useRef(phrase);
  useEffect(() => {
    if (!phrase) return;
    if (before.current && before.current !== phrase && rulings.length > 0) {
      set(keptRulings(rulings, before.current, phrase));
    }
    before.current = phrase;
  }, [phrase]);
}

function Tempo({ tempo, set }: { tempo: number; set(tempo: number): void }) {
  return (
    <label class="reading">
      <span>Quarter notes a minute</span>
      <input
        type="number"
        inputMode="numeric"
        min={SLOWEST}
        max={FASTEST}
        value={tempo}
        onChange={(event) => {
          const wanted = Math.round(Number(event.currentTarget.value)) || TEMPO;
          const within = Math.min(FASTEST, Math.max(SLOWEST, wanted));
          event.currentTarget.value = String(within);
          set(within);
        }}
      />
    </label>
  );
}

/** What cannot be read or looks odd, each with its line and column, where a tap leads to. */
function Told({ read, show }: { read: EntryRead; show(where: Remark): void }) {
  if (read.state === 'empty') return null;
  const bad = read.state === 'faults';
  const told = bad ? read.faults : read.remarks;
  const fault = read.state === 'phrase' ? read.explained.fault : null;
  return (
    <div role="status" class="told">
      {told.map((remark) => (
        <p
          key={`${remark.line} ${remark.column} ${remark.sentence}`}
          class={`notice ${bad ? 'bad' : ''}`}
        >
          <button type="button" class="button quiet" onClick={() => show(remark)}>
            Line {remark.line}, column {remark.column}
          </button>
          <span>{remark.sentence}</span>
        </p>
      ))}
      {fault && <p class="notice bad">{fault}</p>}
    </div>
  );
}

/** A few notes on the two highest strings, to show how it is written. */
function exampleFor(labels: readonly string[]): string {
  const rows = ['-------3-6-3---', '-----4-------4-', '---5-----------'];
  return labels.map((label, i) => `${label.padEnd(2)}|${rows[i] ?? '-'.repeat(15)}|`).join('\n');
}
