/** How a deck document names its instrument: one from the list, or one from the list with changes, or another. */
import { INSTRUMENTS } from '../neck/instrument.ts';
import { instrumentFault } from '../neck/instrumentFault.ts';
import type { Instrument } from '../neck/instrument.ts';
import { parsePitch } from '../theory/note.ts';
import type { PitchName } from '../theory/note.ts';
import type { Fault } from './envelope.ts';

/** What a document may say of an instrument; what it leaves out is as on the listed one of that name. */
interface InstrumentWords {
  readonly name: string;
  readonly tuning?: string[] | undefined;
  readonly frets?: number | undefined;
  readonly scaleLength?: number | undefined;
  readonly capo?: number | undefined;
  readonly leftHanded?: boolean | undefined;
}

/** The instrument that the words mean. */
export function readInstrument(words: InstrumentWords): Instrument | Fault {
  const listed = INSTRUMENTS.find(({ name }) => name === words.name);
  const { tuning, frets, scaleLength } = { ...listed, ...given(words) };
  if (!tuning || !frets || !scaleLength) {
    const names = INSTRUMENTS.map(({ name }) => `"${name}"`).join(', ');
    return {
      fault: `no listed instrument has that name: choose from ${names}, or add its "tuning", "frets" and "scaleLength"`,
    };
  }
  const { name, capo = 0, leftHanded = false } = words;
  const instrument = { name, tuning: tuning.map(plain), frets, scaleLength, capo, leftHanded };
  const fault = instrumentFault(instrument);
  return fault === null ? instrument : { fault: fault.replace(/\.$/, '') };
}

/** The fewest words for an instrument. Inverts `readInstrument`. */
export function writeInstrument(instrument: Instrument): string | InstrumentWords {
  const listed = INSTRUMENTS.find(({ name }) => name === instrument.name);
  const usual: Partial<Instrument> = { capo: 0, leftHanded: false, ...listed };
  const changes = Object.entries(instrument).filter(
    ([word, value]) => JSON.stringify(value) !== JSON.stringify(usual[word as keyof Instrument]),
  );
  return changes.length === 0
    ? instrument.name
    : { name: instrument.name, ...Object.fromEntries(changes) };
}

function given(words: InstrumentWords): Partial<Instrument> {
  return Object.fromEntries(Object.entries(words).filter(([, value]) => value !== undefined));
}

/** A pitch in ASCII where it is one; else as it came, for the instrument's own check to tell of. */
function plain(written: string): PitchName {
  const pitch = parsePitch(written);
  return pitch ? `${pitch.name}${pitch.octave}` : written;
}
