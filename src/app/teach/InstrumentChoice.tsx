import { useState } from 'preact/hooks';
import { onInstrument } from '../../making/draft.ts';
import { INSTRUMENTS, tuningText, type Instrument } from '../../neck/instrument.ts';
import { instrumentFault } from '../../neck/instrumentFault.ts';
import { instrumentWords } from '../deckWords.ts';
import { change, draft } from './kept/openDraft.ts';

const OWN = 'own tuning';

/** As it is written down, right or not. */
interface Written {
  readonly tuning: string;
  readonly frets: string;
  readonly capo: string;
  readonly scaleLength: string;
  readonly leftHanded: boolean;
}

/** The instrument of the lesson: one from the list, or one tuned and built otherwise. */
export function InstrumentChoice() {
  const { instrument } = draft.value;
  const [open, setOpen] = useState(false);
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Instrument · {instrumentWords(instrument)}</summary>
      {open && <InstrumentFields />}
    </details>
  );
}

function InstrumentFields() {
  const { instrument } = draft.value;
  const [written, setWritten] = useState(() => writtenOf(instrument));
  const meant = instrumentOf(written);
  const fault = instrumentFault(meant);
  const take = (part: Partial<Written>) => {
    const next = { ...written, ...part };
    setWritten(next);
    const made = instrumentOf(next);
    if (!instrumentFault(made)) change(onInstrument(draft.value, made));
  };
  return (
    <>
      <TunedAs name={meant.name} take={take} />
      <OpenStrings
        tuning={written.tuning}
        isFaulty={fault !== null}
        // Taken when it is written to its end: on the way there strings are missing.
        write={(tuning) => setWritten({ ...written, tuning })}
        take={(tuning) => take({ tuning })}
      />
      <NumberField label="Frets" value={written.frets} set={(frets) => take({ frets })} />
      <NumberField
        label="Capo on fret (0: none)"
        value={written.capo}
        set={(capo) => take({ capo })}
      />
      <NumberField
        label="Scale length, mm"
        value={written.scaleLength}
        set={(scaleLength) => take({ scaleLength })}
      />
      <label class="reading">
        <span>Left-handed</span>
        <input
          type="checkbox"
          checked={written.leftHanded}
          onChange={(event) => take({ leftHanded: event.currentTarget.checked })}
        />
      </label>
      <p id="instrument-fault" role="status" class={fault ? 'notice bad' : undefined}>
        {fault && `${fault} Until then the lesson is for the ${instrument.name}.`}
      </p>
    </>
  );
}

interface OpenStringsProps {
  tuning: string;
  isFaulty: boolean;
  /** With every letter, and once it is written to its end. */
  write(tuning: string): void;
  take(tuning: string): void;
}

function OpenStrings({ tuning, isFaulty, write, take }: OpenStringsProps) {
  return (
    <label class="field">
      <span class="label">Open strings, the lowest first</span>
      <input
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        maxLength={60}
        aria-invalid={isFaulty}
        aria-describedby="instrument-fault"
        value={tuning}
        onInput={(event) => write(event.currentTarget.value)}
        onChange={(event) => take(event.currentTarget.value)}
      />
    </label>
  );
}

interface TunedAsProps {
  name: string;
  take(part: Partial<Written>): void;
}

/** An instrument from the list, held in whichever hand. */
function TunedAs({ name: meant, take }: TunedAsProps) {
  const isListed = INSTRUMENTS.some(({ name }) => name === meant);
  const choose = (wanted: string) => {
    const chosen = INSTRUMENTS.find(({ name }) => name === wanted);
    if (!chosen) return;
    const { leftHanded: _, ...written } = writtenOf(chosen);
    take(written);
  };
  return (
    <label class="field">
      <span class="label">Tuned as</span>
      <select value={meant} onChange={(event) => choose(event.currentTarget.value)}>
        {INSTRUMENTS.map(({ name }) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
        {!isListed && <option value={meant}>{meant}</option>}
      </select>
    </label>
  );
}

interface NumberFieldProps {
  label: string;
  /** As it is written, number or not. */
  value: string;
  set(value: string): void;
}

function NumberField({ label, value, set }: NumberFieldProps) {
  return (
    <label class="reading">
      <span>{label}</span>
      <input
        type="number"
        inputMode="numeric"
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}

function writtenOf(instrument: Instrument): Written {
  const { frets, capo, scaleLength, leftHanded } = instrument;
  return {
    tuning: tuningText(instrument),
    frets: String(frets),
    capo: String(capo),
    scaleLength: String(scaleLength),
    leftHanded,
  };
}

/** What is written down, sensible or not. It is named from the list where it is tuned as one of those. */
function instrumentOf({ tuning: text, frets, capo, scaleLength, leftHanded }: Written): Instrument {
  const tuning = text
    .trim()
    .split(/[\s,]+/)
    .map(plainPitch);
  const listed = INSTRUMENTS.find((one) => tuningText(one) === tuning.join(' '));
  return {
    name: listed?.name ?? OWN,
    tuning,
    frets: number(frets),
    capo: number(capo),
    scaleLength: number(scaleLength),
    leftHanded,
  };
}

/** `b♭2` as `Bb2`; what is none as it came, for the sentence that tells of it. */
function plainPitch(text: string): string {
  const plain = text.replaceAll('♭', 'b').replaceAll('♯', '#');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

function number(text: string): number {
  return text.trim() === '' ? NaN : Number(text);
}
