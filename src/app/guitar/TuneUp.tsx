import { useEffect, useState } from 'preact/hooks';
import { tuneUp } from '../../listening/tasks.ts';
import { openMidi, type Instrument, soundingPitches } from '../../neck/instrument.ts';
import type { Key } from '../../theory/key.ts';
import { noteLabel } from '../../theory/naming.ts';
import { parsePitch, type PitchName } from '../../theory/note.ts';
import { settings } from '../state.ts';
import { tuningOf, withReading, type StringReadings } from './tuning.ts';
import { centsLabel, isInTune, stringWords, tuningWords } from './tuningWords.ts';

/** All strings have been in tune for so long, ms: then nobody has to tap. */
const SETTLED = 1500;

interface TuneUpProps {
  instrument: Instrument;
  /** With how far the guitar is off as a whole, cents; null where tuning up was left out. */
  done(offset: number | null): void;
}

/** Each open string by its name, and how far it is off. */
export function TuneUp({ instrument, done }: TuneUpProps) {
  const strings = openMidi(instrument);
  const { readings, last } = useReadings(strings);
  const tuning = tuningOf(readings, isInTune);
  const isReady = tuning.state === 'ready';
  const mayBeLeft = isReady || tuning.state === 'together';
  useEffect(() => {
    if (!isReady) return;
    const timer = setTimeout(() => done(tuning.offset), SETTLED);
    return () => clearTimeout(timer);
  }, [isReady]);
  const names = soundingPitches(instrument).toReversed().map(pitchLabel);
  const numbers = strings.map((_, i) => i).toReversed();
  const said = last === null ? '' : `${names[last]}: ${stringWords(readings[last]!).words}`;
  return (
    <>
      <ul class="strings">
        {numbers.map((i) => (
          <OpenString
            key={i}
            number={i + 1}
            name={names[i]!}
            cents={readings[i]!}
            isLast={i === last}
          />
        ))}
      </ul>
      <p role="status" class="tuned">
        {tuningWords(tuning)}
      </p>
      <p class="unseen" aria-live="polite">
        {said}
      </p>
      <p class="soft">A is {settings.value.reference} Hz, as under Sound and names.</p>
      <div class="buttons last">
        <button type="button" class="button" data-do="skip" onClick={() => done(null)}>
          Skip tuning
        </button>
        <button
          type="button"
          class="button main"
          data-do="tuned"
          aria-disabled={!mayBeLeft}
          onClick={() => mayBeLeft && done(tuning.offset)}
        >
          {tuning.state === 'together' ? 'Leave it so' : 'Go on'}
        </button>
      </div>
    </>
  );
}

/** What the microphone tells of the strings; `last` is the one heard last. */
function useReadings(strings: readonly number[]) {
  const [readings, setReadings] = useState<StringReadings>(() => strings.map(() => null));
  const [last, setLast] = useState<number | null>(null);
  useEffect(() => {
    const task = tuneUp(strings, settings.value.reference, {
      onString(tuning) {
        setReadings((before) => withReading(before, strings, tuning));
        setLast(tuning.string);
      },
    });
    return () => task.stop();
  }, []);
  return { readings, last };
}

interface OpenStringProps {
  number: number;
  name: string;
  cents: number | null;
  isLast: boolean;
}

/** Cents from the middle of the scale to its end. */
const END = 50;

function OpenString({ number, name, cents, isLast }: OpenStringProps) {
  const { state, arrow, words } = stringWords(cents);
  const at = cents === null ? null : 50 + (50 * Math.max(-END, Math.min(END, cents))) / END;
  return (
    <li data-tune={number} data-state={state} class={isLast ? 'last-heard' : ''}>
      <span class="name music">{name}</span>
      <span class="reading">
        <svg class="cents" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
          <rect class="zone" x="45" y="0" width="10" height="10" />
          <path class="middle" d="M50 0V10" />
          {at !== null && <path class="needle" d={`M${at} 0V10`} />}
        </svg>
        <span class="way">
          {cents !== null && `${centsLabel(cents)} `}
          <span aria-hidden="true">{arrow} </span>
          {words}
        </span>
      </span>
    </li>
  );
}

/** Names that are not relative to a key are the same in any. */
const ANY_KEY: Key = { tonic: 'C', scale: 'major' };

/** `B♭3`, `H3`, `Si♭3`: as the student reads notes, in letters where those are relative to a key. */
function pitchLabel(pitch: PitchName): string {
  const { naming } = settings.value;
  const absolute = naming === 'movable' || naming === 'degrees' ? 'english' : naming;
  const { name, octave } = parsePitch(pitch)!;
  return noteLabel(name, absolute, ANY_KEY) + octave;
}
