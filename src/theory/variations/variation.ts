import type { Key } from '../key.ts';
import type { Phrase, PhraseNote } from '../phrase.ts';
import { add, beats, type Beats } from '../rhythm.ts';

/** A phrase made from another. */
export interface Variation {
  /** Short: `backwards`. */
  readonly name: string;
  /** How it differs, in one sentence. */
  readonly says: string;
  /** Without places and joins, which belong to the notes that were. */
  readonly phrase: Phrase;
  /** The key that it is in. */
  readonly key: Key;
}

/** What a note sounds, without when and where. */
export type Sound = Pick<PhraseNote, 'midi' | 'name'>;

/** Other sounds in the phrase's own rhythm. */
export function inRhythmOf({ notes, tempo }: Phrase, sounds: readonly Sound[]): Phrase {
  return {
    tempo,
    notes: notes.map(({ at, length }, i) => ({ ...soundOf(sounds[i]!), at, length })),
  };
}

/** Sounds one after the other, each for its own time: what it lasts, and how long until the next one starts. */
export function inOrder(tempo: number, sounds: readonly Timed[]): Phrase {
  let at = beats(0);
  const notes = sounds.map((sound) => {
    const note = { ...soundOf(sound), at, length: sound.length };
    at = add(at, sound.until);
    return note;
  });
  return { tempo, notes };
}

/** A sound with its time. */
export interface Timed extends Sound {
  readonly length: Beats;
  /** From its onset to the next one's. */
  readonly until: Beats;
}

const soundOf = ({ midi, name }: Sound): Sound => ({ midi, name });

/** Whether two phrases sound alike: same notes at the same times. */
export function soundsLike(a: Phrase, b: Phrase): boolean {
  const text = ({ notes }: Phrase) =>
    notes.map(({ midi, at, length }) => [midi, at.n, at.d, length.n, length.d].join()).join(' ');
  return text(a) === text(b);
}
