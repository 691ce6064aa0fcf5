import { note as read } from '@tonaljs/pitch-note';

/** A note's name without its octave, accidentals in ASCII: `C`, `Bb`, `F##`. */
export type NoteName = string;

/** A note name with its octave in scientific pitch notation (C4 = MIDI 60): `E2`, `Cb4`. */
export type PitchName = string;

/** A pitch taken apart: its name, its octave (which follows the letter: Cb4 is B3), its MIDI number. */
interface Pitch {
  readonly name: NoteName;
  readonly octave: number;
  readonly midi: number;
}

// Four accidentals, because scales on a doubly sharpened tonic have notes with three and four.
const PITCH = /^([A-G])(#{0,4}|b{0,4})(-1|\d)?$/;

const plain = (text: string) => {
  const signs = text
    .trim()
    .replaceAll('♭', 'b')
    .replaceAll('♯', '#')
    .replaceAll('𝄫', 'bb')
    .replaceAll(/𝄪|x/g, '##')
    .replaceAll('♮', '');
  return signs.charAt(0).toUpperCase() + signs.slice(1);
};

/** The note that a text names, or null: `Bb`, `B♭`, `f##`, `Fx`. */
export function parseNote(text: string): NoteName | null {
  const name = plain(text);
  const match = PITCH.exec(name);
  return match && match[3] === undefined ? name : null;
}

/** The pitch that a text names, octaves −1 to 9, or null: `E2`, `B♭3`. */
export function parsePitch(text: string): Pitch | null {
  const name = plain(text);
  const match = PITCH.exec(name);
  if (!match || match[3] === undefined) return null;
  return { name: `${match[1]}${match[2]}`, octave: Number(match[3]), midi: read(name).height };
}

/** How many semitones a note lies above C, 0 to 11, whatever its spelling. */
export function chroma(name: NoteName): number {
  return read(name).chroma;
}

/** The pitch class of a MIDI number, 0 for C to 11 for B; of an interval in semitones, what is left of it upward. */
export function pitchClass(semitones: number): number {
  return ((semitones % 12) + 12) % 12;
}

/** How many semitones one note lies above another, 0 to 11. */
export function semitonesAbove(from: NoteName, to: NoteName): number {
  return pitchClass(chroma(to) - chroma(from));
}

/** Where a note stands on the line of fifths: F −1, C 0, G 1, … Bb −2, F# 6. */
export function fifths(name: NoteName): number {
  return read(name).coord[0]!;
}

/**
 * The MIDI number of a pitch, C4 = 60.
 * @throws RangeError where the text is no pitch.
 */
export function midiOf(pitch: PitchName): number {
  const parsed = parsePitch(pitch);
  if (!parsed) throw new RangeError(`“${pitch}” is not a note with an octave, like E2 or Bb3.`);
  return parsed.midi;
}

/** Frequency in Hz of a MIDI number in equal temperament, A4 (69) at `reference` Hz (ISO 16: 440). */
export function frequency(midi: number, reference = 440): number {
  return reference * 2 ** ((midi - 69) / 12);
}
