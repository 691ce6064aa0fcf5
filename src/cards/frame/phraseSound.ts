import type { Place } from '../../neck/place.ts';
import type { Sounding } from '../../sound/sounding.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { toNumber } from '../../theory/rhythm.ts';

/** A phrase as it is sounded, each note on the string of its place, where that is given here or known of the note. */
export function phraseSound({ notes, tempo }: Phrase, places: readonly Place[] = []): Sounding {
  return {
    tempo,
    notes: notes.map(({ midi, at, length, articulation, ...note }, index) => {
      const place = places[index] ?? note.place;
      return {
        midi,
        at: toNumber(at),
        length: toNumber(length),
        ...(place && { string: place.string }),
        ...(articulation && { articulation }),
      };
    }),
  };
}
