import { KINDS } from '../../cards/here.ts';
import { SmallNeck, type SmallDot } from '../../parts/SmallNeck.tsx';
import type { Item } from '../../practice/item.ts';
import { usePlay } from '../../sound/usePlay.ts';
import { itemWords } from '../deckWords.ts';
import { settings } from '../state.ts';
import { round } from './session.ts';
import { ItemNames } from './ItemNames.tsx';

/** So many are drawn. */
const DRAWN = 3;

/** So many frets are drawn at least. */
const FRETS = 4;

/** What was missed: up to three shapes as small necks that sound when they are tapped, the others by name. */
export function Missed({ items }: { items: readonly Item[] }) {
  const shapes = items.map(shapeOf);
  const drawn = shapes.filter(({ dots }) => dots.length > 0).slice(0, DRAWN);
  const named = items.filter((item) => !drawn.some((shape) => shape.item === item));
  const play = usePlay();
  return (
    <>
      {drawn.length > 0 && (
        <ul class="missed-shapes">
          {drawn.map(({ item, instrument, name, dots, sound }) => (
            <li key={item.id}>
              <button
                type="button"
                class="button"
                aria-label={`Hear ${name}: ${itemWords(item)}`}
                onClick={() => play(sound)}
              >
                <SmallNeck instrument={instrument} frets={framed(dots)} dots={dots} />
                <b class="music">{name}</b>
              </button>
            </li>
          ))}
        </ul>
      )}
      {named.length > 0 && <ItemNames items={named} />}
    </>
  );
}

/** The right answer to the item as it was asked last. */
function shapeOf(item: Item) {
  const kind = KINDS[item.kind];
  const card = kind.ask(item, round.value!.asked.findLast((one) => one.item === item.id)!.seed);
  const told = kind.explain(card, { right: true, takenFor: null }, '', settings.value.naming);
  const { name, title, dots, sound } = told;
  return { item, instrument: card.instrument, name: name ?? title, dots, sound };
}

function framed(dots: readonly SmallDot[]): readonly [number, number] {
  const frets = dots.map(({ fret }) => fret);
  const low = Math.min(...frets);
  return [low, Math.max(low + FRETS - 1, ...frets)];
}
