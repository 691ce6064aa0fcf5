import { keyName } from './key.ts';
import { chroma, fifths, noteAt, pitchClass, type NoteName } from './note.ts';
import { scaleNotes, type Key } from './scale.ts';

const spellings = new Map<string, readonly NoteName[]>();

/**
 * How the key spells a sounding pitch: its own notes as they are, foreign ones as the harmonic chromatic scale on its
 * tonic, ♭2 ♭3 3 ♯4 ♭6 6 ♭7 7 (common practice).
 */
export function spell(key: Key, midi: number): NoteName {
  const id = keyName(key);
  let names = spellings.get(id);
  if (!names) {
    names = Array.from({ length: 12 }, (_, semitones) => spelling(key, semitones));
    spellings.set(id, names);
  }
  return names[pitchClass(midi)]!;
}

function spelling(key: Key, semitones: number): NoteName {
  const own = scaleNotes(key).find((note) => chroma(note) === semitones);
  if (own) return own;
  // On the line of fifths that scale runs from five below the tonic to six above; what sounds alike is 12 apart.
  const lowest = fifths(key.tonic) - 5;
  const alike = semitones * 7;
  return noteAt(alike + 12 * Math.ceil((lowest - alike) / 12));
}
