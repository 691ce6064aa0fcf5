import { takesLowest } from '../../neck/shapeChoice.ts';
import type { Form } from '../../neck/form.ts';
import type { Instrument } from '../../neck/instrument.ts';
import { fingered, laidOut, rank, thinned, type LaidOut, type Shape } from '../../neck/shapes.ts';
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
  stacked: 60,
  inversion: 6,
  spread: 3,
  cluster: 0.05,
};
/** How much less often with each flaw. */
const FLAWED = 0.3;

/** Draws one of the shapes of the item: what a teacher draws first is the likelier to come. */
export function ask(item: SpotItem, seed: number): SpotCard {
  const { chord, instrument, stringSet, frets, shapes } = item;
  const region = { strings: stringSet, frets };
  const found = laidOut(instrument, chord, region, ([lowest]) =>
    takesLowest(shapes, lowest!.member),
  );
  const shape = drawn(instrument, found, seeded(seed));
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

function drawn(instrument: Instrument, found: readonly LaidOut[], random: Random): Shape {
  const weighed = alikeIn(instrument, found).map((alike) => {
    const { form, flaws } = alike[0]!;
    return { alike, weight: OFTEN[form] * FLAWED ** flaws };
  });
  let left = random.next() * weighed.reduce((sum, { weight }) => sum + weight, 0);
  const { alike } = weighed.find(({ weight }) => (left -= weight) < 0) ?? weighed[0]!;
  const easiest = fingered(instrument, alike);
  // The easier for a hand the likelier: the least of two draws.
  return easiest[Math.floor(Math.min(random.next(), random.next()) * easiest.length)]!;
}

/** Shapes of one form with as many flaws, those first that a teacher draws first; of such as come together, the easier. */
function alikeIn(instrument: Instrument, found: readonly LaidOut[]): (readonly LaidOut[])[] {
  const alike = new Map<string, LaidOut[]>();
  for (const shape of found) {
    const name = `${shape.form} ${shape.flaws}`;
    const some = alike.get(name);
    if (some) some.push(shape);
    else alike.set(name, [shape]);
  }
  const costs = new Map<readonly LaidOut[], number>();
  const cost = (some: readonly LaidOut[]) => {
    const least = costs.get(some) ?? fingered(instrument, some)[0]!.cost;
    costs.set(some, least);
    return least;
  };
  return [...alike.values()]
    .map(thinned)
    .toSorted((a, b) => rank(a[0]!) - rank(b[0]!) || cost(a) - cost(b));
}
