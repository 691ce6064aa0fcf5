import type { Form } from '../../neck/form.ts';
import { shapes, type Shape } from '../../neck/shapes.ts';
import { degreesAlike } from '../../theory/chord.ts';
import { seeded, type Random } from '../../theory/random.ts';
import type { NamedCard } from '../arpeggio/named.ts';
import type { SpotItem } from './items.ts';

/** A shape of an arpeggio; where another chord holds its notes (a thirteenth, a symmetric chord) with the root shown. */
export interface SpotCard extends NamedCard<SpotItem> {
  readonly shape: Shape;
}

/** How often each form is drawn beside the others that an item has: mostly root position, a cluster seldom. */
const OFTEN: Readonly<Record<Form, number>> = {
  stacked: 40,
  inversion: 6,
  spread: 3,
  cluster: 0.05,
};
/** How much less often with each flaw. */
const FLAWED = 0.3;

/** Draws one of the shapes of the item: what a teacher draws first is the likelier to come. */
export function ask(item: SpotItem, seed: number): SpotCard {
  const { chord, instrument, stringSet, frets } = item;
  const found = shapes(instrument, chord, { strings: stringSet, frets });
  const random = seeded(seed);
  const shape = drawn(found, random);
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

function drawn(found: readonly Shape[], random: Random): Shape {
  const weighed = found
    .filter(
      ({ form, flaws }, i) =>
        found.findIndex((one) => one.form === form && one.flaws === flaws) === i,
    )
    .map(({ form, flaws }) => ({ form, flaws, weight: OFTEN[form] * FLAWED ** flaws }));
  let left = random.next() * weighed.reduce((sum, { weight }) => sum + weight, 0);
  const { form, flaws } = weighed.find(({ weight }) => (left -= weight) < 0) ?? weighed[0]!;
  const alike = found.filter((one) => one.form === form && one.flaws === flaws);
  // The easier for a hand the likelier: the least of two draws.
  return alike[Math.floor(Math.min(random.next(), random.next()) * alike.length)]!;
}
