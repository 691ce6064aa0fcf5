import type { Key } from '../key.ts';
import type { Phrase, PhraseNote } from '../phrase.ts';
import { add, beats, compare, type Beats } from '../rhythm.ts';

/** A phrase made from another. */
export interface Variation {
  /** Short: `backwards`. */
  readonly name: string;
  /** How it differs, in one sentence. */
  readonly says: string;
  /** Without places and articulations, which belong to the notes that were. */
  readonly phrase: Phrase;
  /** The key that it is in. */
  readonly key: Key;
}

/** What a note sounds, without when and where. */
type NamedPitch = Pick<PhraseNote, 'midi' | 'name'>;

/** Other notes in the phrase's own rhythm. */
export function inRhythmOf({ notes, tempo }: Phrase, pitches: readonly NamedPitch[]): Phrase {
  return {
    tempo,
    notes: notes.map(({ at, length }, i) => ({ ...pitchOf(pitches[i]!), at, length })),
  };
}

/** Notes one after the other, each for its own time: what it lasts, and how long until the next one starts. */
export function oneAfterAnother(tempo: number, timed: readonly TimedPitch[]): Phrase {
  let at = beats(0);
  const notes = timed.map((note) => {
    const onset = at;
    at = add(at, note.until);
    return { ...pitchOf(note), at: onset, length: note.length };
  });
  return { tempo, notes };
}

/** A note with its time. */
export interface TimedPitch extends NamedPitch {
  readonly length: Beats;
  /** From its onset to the next one's. */
  readonly until: Beats;
}

const pitchOf = ({ midi, name }: NamedPitch): NamedPitch => ({ midi, name });

/** Whether two phrases sound alike: same notes at the same times. */
export function soundsLike(a: Phrase, b: Phrase): boolean {
  return (
    a.notes.length === b.notes.length &&
    a.notes.every(({ midi, at, length }, i) => {
      const other = b.notes[i]!;
      return (
        midi === other.midi && compare(at, other.at) === 0 && compare(length, other.length) === 0
      );
    })
  );
}
