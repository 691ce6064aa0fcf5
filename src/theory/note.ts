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
  const ascii = text
    .trim()
    .replaceAll('♭', 'b')
    .replaceAll('♯', '#')
    .replaceAll('𝄫', 'bb')
    .replaceAll(/𝄪|x/g, '##')
    .replaceAll('♮', '');
  return ascii.charAt(0).toUpperCase() + ascii.slice(1);
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
  const note = `${match[1]}${match[2]}`;
  const octave = Number(match[3]);
  const letter = pitchClass(7 * fifths(note[0]!));
  return { name: note, octave, midi: 12 * (octave + 1) + letter + signs(note) };
}

/** How many semitones a note lies above C, 0 to 11, whatever its spelling. */
export function chroma(name: NoteName): number {
  return pitchClass(7 * fifths(name));
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
  return LINE.indexOf(name[0]!) - 1 + 7 * signs(name);
}

/** The note that stands there. Inverts `fifths`. */
export function noteAt(place: number): NoteName {
  const raised = Math.floor((place + 1) / 7);
  return LINE[place + 1 - 7 * raised]! + (raised < 0 ? 'b' : '#').repeat(Math.abs(raised));
}

/** The letters, a fifth apart. */
const LINE = 'FCGDAEB';

/** By how many semitones a note's signs raise it. */
export function signs(name: NoteName): number {
  return name[1] === 'b' ? 1 - name.length : name.length - 1;
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

/** The octave that a note stands in where it sounds a MIDI number: that of its letter. */
export function octaveOf(name: NoteName, midi: number): number {
  return Math.floor((midi - signs(name)) / 12) - 1;
}

/** Frequency in Hz of a MIDI number in equal temperament, A4 (69) at `reference` Hz (ISO 16: 440). */
export function frequency(midi: number, reference = 440): number {
  return reference * 2 ** ((midi - 69) / 12);
}
