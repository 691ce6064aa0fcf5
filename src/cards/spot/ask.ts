import { shapes, type Shape } from '../../neck/shapes.ts';
import { degreesAlike } from '../../theory/chord.ts';
import { seeded } from '../../theory/random.ts';
import type { NamedCard } from '../arpeggio/named.ts';
import type { SpotItem } from './items.ts';

/** A shape of an arpeggio; where another chord holds its notes (a thirteenth, a symmetric chord) with the root shown. */
export interface SpotCard extends NamedCard<SpotItem> {
  readonly shape: Shape;
}

/** Draws one of the shapes of the item: the likelier for a hand, the likelier to come. */
export function ask(item: SpotItem, seed: number): SpotCard {
  const { chord, instrument, stringSet, frets } = item;
  const found = shapes(instrument, chord, { strings: stringSet, frets });
  const random = seeded(seed);
  // The least of two draws: the first third of the shapes comes five times in nine.
  const index = Math.floor(Math.min(random.next(), random.next()) * found.length);
  const shape = found[index]!;
  return {
    item,
    seed,
    key: chord.key,
    instrument,
    chord,
    shape,
    frets,
    rootShown: degreesAlike(chord).length > 1,
  };
}
