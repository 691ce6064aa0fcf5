import type { Explained } from '../../making/explained.ts';
import { openMidi, type Instrument } from '../../neck/instrument.ts';
import type { Place } from '../../neck/place.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { StripNote } from '../../parts/PhraseStrip.tsx';
import { noteLabel } from '../../theory/naming.ts';
import type { PhraseNote } from '../../theory/phrase.ts';
import { toNumber } from '../../theory/rhythm.ts';

/** Every place of the phrase once, with its degree; of one group only, with the members of its arpeggio. */
export function phraseDots(
  { phrase, key, places, analysis }: Explained,
  group: number | null = null,
): NeckDot[] {
  const dots = new Map<string, NeckDot>();
  const chosen = group === null ? null : analysis.groups[group]!;
  for (const [i, place] of places?.entries() ?? []) {
    const inside = !chosen || (i >= chosen.from && i < chosen.to);
    const at = `${place.string}/${place.fret}`;
    if (!inside && dots.has(at)) continue;
    const { name, degree, member } = analysis.notes[i]!;
    const text = noteLabel(phrase.notes[i]!.name, 'degrees', key);
    const named = { ...place, note: name, degree };
    if (!inside) dots.set(at, { ...place, look: 'faint' });
    else if (chosen && member) dots.set(at, { ...named, member });
    else dots.set(at, { ...named, text });
  }
  return [...dots.values()];
}

/** The notes as the strip shows them: lengths over places over degrees. */
export function stripOf({ phrase, key, places, instrument }: Explained): StripNote[] {
  return phrase.notes.map((note, i) => {
    const { name, at, length, articulation } = note;
    const place = places?.[i] ?? placeNear(note, instrument);
    const label = noteLabel(name, 'degrees', key);
    return { ...place, label, at: toNumber(at), length, ...(articulation && { articulation }) };
  });
}

/** The place that is given; for a note without one, where it would lie if its string had frets enough. */
function placeNear({ midi, place }: PhraseNote, instrument: Instrument): Place {
  if (place) return place;
  const open = openMidi(instrument);
  const string = open.findIndex((sounds) => sounds <= midi) + 1 || open.length;
  return { string, fret: midi - open[string - 1]! };
}
