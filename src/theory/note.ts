/** A note's name without its octave, accidentals in ASCII: `C`, `Bb`, `F##`. */
export type NoteName = string;

/** A note name with its octave in scientific pitch notation (C4 = MIDI 60): `E2`, `Cb4`. */
export type PitchName = string;
