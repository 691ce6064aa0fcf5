import { isolated } from '../decks/plain.ts';
import { KINDS } from '../cards/here.ts';
import type { Drill } from '../decks/deck.ts';
import { INSTRUMENTS, tuningText, type Instrument } from '../neck/instrument.ts';
import type { Item } from '../practice/item.ts';

/** `guitar, capo on fret 3`, `own tuning (D2 G2 D3 G3 B3 E4), left-handed`. */
export function instrumentWords(instrument: Instrument): string {
  const { name, capo, leftHanded } = instrument;
  const isListed = INSTRUMENTS.some((one) => tuningText(one) === tuningText(instrument));
  const tuning = tuningText(instrument).replaceAll('#', '♯').replaceAll('b', '♭');
  return [
    isListed ? name : `${isolated(name)} (${tuning})`,
    ...(capo > 0 ? [`capo on fret ${capo}`] : []),
    ...(leftHanded ? ['left-handed'] : []),
  ].join(', ');
}

/** `name triads and sevenths on strings 5–4 and 4–3, frets 1 to 8`: what a drill asks, for the student. */
export function drillWords(drill: Drill): string {
  return KINDS[drill.kind].words.drill(drill);
}

/** `vii° on strings 3–2`, `V by ear`: an item in a few words. */
export function itemWords(item: Item): string {
  return KINDS[item.kind].words.item(item);
}

/** `name vii° on strings 3–2, frets 1 to 7`, `V by ear, turn`: enough words to tell an item from its neighbours. */
export function itemPlace(item: Item): string {
  return KINDS[item.kind].words.itemPlace(item);
}
