/** What is drilled and where: for all drills of the form, or for one that is tuned apart. */
import { useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { readStringSet, usualSets, type StringSet } from '../../making/stringSets.ts';
import { fretsLeft, type Instrument } from '../../neck/instrument.ts';
import { SIZES, type Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { TextForm } from '../TextForm.tsx';
import { Many } from './Many.tsx';

const ALL_DEGREES = ['1', '2', '3', '4', '5', '6', '7'] as const;
const USUAL_SIZES = SIZES.slice(0, 3);

interface DegreeProps {
  musicKey: Key;
  size: Size | undefined;
  degrees: readonly number[];
  choose(degrees: number[]): void;
}

export function DegreeChoice({ musicKey, size = 'triad', degrees, choose }: DegreeProps) {
  const steps = degreeSteps(musicKey, size, { naming: 'english', chordNames: false });
  return (
    <Many
      legend="Degrees"
      music
      all={ALL_DEGREES}
      chosen={degrees.map(String)}
      label={(degree) => steps[Number(degree) - 1]!.numeral}
      choose={(chosen) => choose(chosen.map(Number))}
    />
  );
}

export function SizeChoice({
  sizes,
  choose,
}: {
  sizes: readonly Size[];
  choose(sizes: Size[]): void;
}) {
  const [more, setMore] = useState(sizes.some((size) => !USUAL_SIZES.includes(size)));
  return (
    <Many
      legend="Chords"
      all={more ? SIZES : USUAL_SIZES}
      chosen={sizes}
      label={(size) => `${size}s`}
      choose={choose}
    >
      {!more && (
        <button type="button" class="button small" onClick={() => setMore(true)}>
          larger
        </button>
      )}
    </Many>
  );
}

interface StringProps {
  instrument: Instrument;
  strings: readonly StringSet[];
  choose(strings: StringSet[]): void;
}

/** The string sets as offered, and any other that is written down. */
export function StringChoice({ instrument, strings, choose }: StringProps) {
  const [adding, setAdding] = useState(false);
  const usual = usualSets(instrument).map(String);
  const chosen = strings.map(String);
  const all = [...usual, ...chosen.filter((set) => !usual.includes(set))];
  const sets = (some: readonly string[]) => some.map((set) => set.split(',').map(Number));
  const add = (set: readonly number[]) => {
    setAdding(false);
    if (!chosen.includes(String(set))) choose([...strings, set]);
  };
  return (
    <>
      <Many
        legend="Strings"
        all={all}
        chosen={chosen}
        label={(set) => set.replaceAll(',', '–')}
        choose={(some) => choose(sets(some))}
      >
        {!adding && (
          <button type="button" class="button small" onClick={() => setAdding(true)}>
            other strings
          </button>
        )}
      </Many>
      {adding && <OtherStrings instrument={instrument} add={add} />}
    </>
  );
}

interface OtherStringsProps {
  instrument: Instrument;
  add(set: readonly number[]): void;
}

/** A string set that is not among the usual ones, to be written. */
function OtherStrings({ instrument, add }: OtherStringsProps) {
  const take = (text: string) => {
    const read = readStringSet(text, instrument);
    if ('fault' in read) return read.fault;
    add(read.set);
    return null;
  };
  return (
    <TextForm
      label="Strings from the lowest, like 6-4-3"
      name="Add"
      take={take}
      field={{ maxLength: 20 }}
      begun
    />
  );
}

interface FretProps {
  instrument: Instrument;
  frets: readonly [number, number];
  choose(frets: [number, number]): void;
}

/** The lowest and the highest fret, two apart at least. */
export function FretChoice({ instrument, frets: [low, high], choose }: FretProps) {
  const all = Array.from({ length: fretsLeft(instrument) + 1 }, (_, fret) => fret);
  return (
    <fieldset class="frets">
      <legend>Frets</legend>
      <FretSelect
        label="from"
        value={low}
        all={all.slice(0, -2)}
        choose={(from) => choose([from, Math.max(high, from + 2)])}
      />
      <FretSelect
        label="to"
        value={high}
        all={all.slice(2)}
        choose={(to) => choose([Math.min(low, to - 2), to])}
      />
    </fieldset>
  );
}

interface FretSelectProps {
  label: string;
  value: number;
  all: readonly number[];
  choose(fret: number): void;
}

function FretSelect({ label, value, all, choose }: FretSelectProps) {
  return (
    <label>
      {label}{' '}
      <select value={value} onChange={(event) => choose(Number(event.currentTarget.value))}>
        {all.map((fret) => (
          <option key={fret} value={fret}>
            {fret === 0 ? 'open' : fret}
          </option>
        ))}
      </select>
    </label>
  );
}
