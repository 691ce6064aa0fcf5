import { useEffect, useRef, useState } from 'preact/hooks';
import type { Remark } from '../../../decks/notation/remark.ts';
import type { TablatureRead } from '../../../decks/notation/tablature-reader.ts';
import { labelsOf } from '../../../decks/notation/tablature.ts';
import type { Instrument } from '../../../neck/instrument.ts';

interface TextFieldProps {
  /** What is typed, or what the phrase looks like as tablature. */
  text: string;
  /** What is said of the text that is typed; null where none is. */
  read: TablatureRead | null;
  instrument: Instrument;
  type(text: string): void;
  /** Goes back to the tablature of what is written; null where nothing is. */
  letGo: (() => void) | null;
}

/** The phrase as tablature, to be typed or pasted into: what can be read is the phrase, the rest is pointed at. */
export function TextField({ text, read, instrument, type, letGo }: TextFieldProps) {
  const field = useRef<HTMLTextAreaElement>(null);
  const bad = read !== null && 'faults' in read;
  const told = read === null ? [] : 'faults' in read ? read.faults : read.remarks;
  const show = ({ line, column }: Remark) => {
    const before = text.split('\n').slice(0, line - 1);
    const from = before.reduce((sum, row) => sum + row.length + 1, column - 1);
    field.current?.focus();
    field.current?.setSelectionRange(from, from + 1);
  };
  return (
    <>
      <label class="field">
        <span class="label">Tablature, string 1 on top</span>
        <textarea
          ref={field}
          class="tablature"
          data-begin
          rows={instrument.tuning.length + 2}
          spellcheck={false}
          autocapitalize="off"
          autocomplete="off"
          wrap="off"
          maxLength={20_000}
          placeholder={exampleFor(labelsOf(instrument))}
          aria-invalid={bad}
          value={text}
          onInput={(event) => type(event.currentTarget.value)}
        />
      </label>
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
      </div>
      {read && 'upper' in read && read.upper !== undefined && (
        <button type="button" class="button small" onClick={() => type(read.upper!)}>
          Keep the upper notes
        </button>
      )}
      {bad && letGo && (
        <p class="soft">
          Until it can be read, the phrase is as the strip shows it.{' '}
          <button type="button" class="button small" onClick={letGo}>
            Drop this text
          </button>
        </p>
      )}
    </>
  );
}

/** A text once it has stood for a moment, so that nothing is worked out between two keys. */
export function useSettled(text: string | null): string | null {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), 250);
    return () => clearTimeout(timer);
  }, [text]);
  return settled;
}

/** A few notes on the two highest strings, to show how it is written. */
function exampleFor(labels: readonly string[]): string {
  const rows = ['-------3-6-3---', '-----4-------4-', '---5-----------'];
  return labels.map((label, i) => `${label.padEnd(2)}|${rows[i] ?? '-'.repeat(15)}|`).join('\n');
}
