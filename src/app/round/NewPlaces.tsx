import { onNeck } from '../../cards/onNeck.ts';
import { SmallNeck } from '../../parts/SmallNeck.tsx';
import type { Item } from '../../practice/item.ts';
import { placesKnown } from '../../practice/shares.ts';
import { itemPlace } from '../deckWords.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { itemsOfLesson, lessonById, memory } from '../state.ts';
import { round } from './session.ts';
import { ItemNames } from './ItemNames.tsx';

/** What is new, on the neck of the lesson: every place as full as it is known, those that came new with a ring. */
export function NewPlaces({ fresh }: { fresh: readonly Item[] }) {
  const { deck } = round.value!;
  const { instrument } = lessonById(deck)!.deck;
  const { of } = memory.value;
  const asked = onNeck(
    itemsOfLesson(deck).filter(({ id }) => of.items.has(id)),
    instrument,
  );
  const came = onNeck(fresh, instrument).flatMap(({ places }) => places);
  if (came.length === 0) return <ItemNames items={fresh} />;
  const isNew = (string: number, fret: number) =>
    came.some((place) => place.string === string && place.fret === fret);
  const dots = placesKnown(asked, of, tomorrowOf(Date.now())).map(({ string, fret, recall }) => ({
    string,
    fret,
    filled: recall,
    ringed: isNew(string, fret),
  }));
  const frets = dots.map(({ fret }) => fret);
  return (
    <SmallNeck
      instrument={instrument}
      frets={[Math.min(...frets), Math.max(...frets, 4)]}
      dots={dots}
      lies
      label={`The neck; ringed are the places of what is new: ${fresh.map(itemPlace).join(', ')}`}
    />
  );
}
