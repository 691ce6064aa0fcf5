import { fifths, midiOf, noteAt, octaveOf, parsePitch, type PitchName } from '../theory/note.ts';

/** A fretted instrument as it lies in the player's hands. */
export interface Instrument {
  /** `guitar`, `drop D`, `bass`, … or what a teacher calls it. */
  readonly name: string;
  /** Open strings without the capo, from the highest string number down: E2 A2 D3 G3 B3 E4. */
  readonly tuning: readonly PitchName[];
  /** How many frets it has, 12 to 27. */
  readonly frets: number;
  /** Nut to bridge, mm. */
  readonly scaleLength: number;
  /** The fret the capo lies on; 0 is none. Other frets are counted from it. */
  readonly capo: number;
  readonly leftHanded: boolean;
}

function listed(name: string, tuning: string, frets: number, scaleLength: number): Instrument {
  return { name, tuning: tuning.split(' '), frets, scaleLength, capo: 0, leftHanded: false };
}

/** The plain guitar: six strings in standard tuning. */
export const GUITAR = listed('guitar', 'E2 A2 D3 G3 B3 E4', 22, 648);

/** The instruments to choose from. Scale lengths are the usual ones of their makers (common practice). */
export const INSTRUMENTS: readonly Instrument[] = [
  GUITAR,
  listed('drop D', 'D2 A2 D3 G3 B3 E4', 22, 648),
  listed('open G', 'D2 G2 D3 G3 B3 D4', 22, 648),
  listed('open D', 'D2 A2 D3 F#3 A3 D4', 22, 648),
  listed('DADGAD', 'D2 A2 D3 G3 A3 D4', 22, 648),
  listed('half step down', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 22, 648),
  listed('7-string guitar', 'B1 E2 A2 D3 G3 B3 E4', 24, 648),
  listed('8-string guitar', 'F#1 B1 E2 A2 D3 G3 B3 E4', 24, 686),
  listed('baritone guitar', 'B1 E2 A2 D3 F#3 B3', 22, 686),
  listed('bass', 'E1 A1 D2 G2', 20, 864),
  listed('5-string bass', 'B0 E1 A1 D2 G2', 20, 864),
  listed('ukulele', 'G4 C4 E4 A4', 15, 380),
];

const openStrings = new WeakMap<Instrument, readonly number[]>();

/**
 * What the open strings sound, MIDI, string 1 first, the capo counted in.
 * @throws RangeError where a string is tuned to what is no pitch.
 */
export function openMidi(instrument: Instrument): readonly number[] {
  let strings = openStrings.get(instrument);
  if (!strings) {
    strings = instrument.tuning.map((pitch) => midiOf(pitch) + instrument.capo).toReversed();
    openStrings.set(instrument, strings);
  }
  return strings;
}

/**
 * What the open strings sound, from the highest string number down, the capo counted in: with a capo on fret 2
 * `F#2 B2 E3 A3 C#4 F#4`. All strings are raised by one interval, of those that sound alike the one that takes fewer
 * signs, flats where it takes as many.
 * @throws RangeError where a string is tuned to what is no pitch.
 */
export function soundingPitches({ tuning, capo }: Instrument): readonly PitchName[] {
  if (capo === 0) return tuning;
  const sharp = (capo * 7) % 12;
  const raised = (by: number) =>
    tuning.map((pitch) => {
      const note = noteAt(fifths(parsePitch(pitch)!.name) + by);
      return note + octaveOf(note, midiOf(pitch) + capo);
    });
  const signsOf = (pitches: readonly PitchName[]) =>
    pitches.join('').replaceAll(/[^#b]/g, '').length;
  const [flats, sharps] = [raised(sharp - 12), raised(sharp)];
  return signsOf(sharps) < signsOf(flats) ? sharps : flats;
}

/** How many frets are left above the capo. */
export function fretsLeft(instrument: Instrument): number {
  return instrument.frets - instrument.capo;
}

/** `E2 A2 D3 G3 B3 E4`, from the highest string number down. */
export function tuningText(instrument: Instrument): string {
  return instrument.tuning.join(' ');
}

/**
 * A word for what decides where notes lie: a listed name (`drop-D`) where the tuning is that one's, else the tuning's
 * notes joined by dots; then `+2` for a capo on fret 2. Frets, scale length and handedness are not in it.
 */
export function instrumentId(instrument: Instrument): string {
  let id = ids.get(instrument);
  if (id === undefined) ids.set(instrument, (id = idOf(instrument)));
  return id;
}

const ids = new WeakMap<Instrument, string>();

function idOf(instrument: Instrument): string {
  const open = openMidi(instrument);
  const known = INSTRUMENTS.find(
    (other) =>
      other.tuning.length === open.length &&
      openMidi(other).every((midi, i) => midi + instrument.capo === open[i]),
  );
  const word = known
    ? known.name.replaceAll(' ', '-')
    : instrument.tuning.map((pitch) => spelled(pitch)).join('.');
  return instrument.capo > 0 ? `${word}+${instrument.capo}` : word;
}

function spelled(pitch: PitchName): PitchName {
  const { name, octave } = parsePitch(pitch)!;
  return name + octave;
}
