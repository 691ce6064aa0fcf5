import { itemsOf } from '../../cards/index.ts';
import { isPhraseDrill, type Deck, type Drill } from '../../decks/deck.ts';
import { marksOf, weakDrills } from '../../practice/lesson.ts';
import { dayAfter, daysUntil, startOf } from '../days.ts';
import { go } from '../router.ts';
import { change, type Draft } from '../teach/draft.ts';
import type { PlacedReport } from './reports.ts';

/** Opens the next lesson, made from what these reports on one lesson show to be weak, in the form. */
export function makeNext(some: readonly PlacedReport[], now: number): void {
  const [first] = some;
  if (!first) return;
  const { deck } = first.lesson;
  const all = some.map(({ report }) => report);
  const drills = weakDrills(
    deck,
    first.items,
    all,
    some.map(({ ahead }) => ahead),
  );
  change({
    ...draftOf(deck, drills.length > 0 ? drills : deck.drills),
    title: onceMore(deck.title),
    note: '',
    lessonDay: deck.lessonDay && weekAfter(deck.lessonDay, now),
    marks: marksOf(all, itemsOf(deck)),
  });
  go('teach');
}

/** The choices of the form that make these drills, as near as it has them. */
function draftOf(deck: Deck, drills: readonly Drill[]): Partial<Draft> {
  const chords = drills.filter((drill) => !isPhraseDrill(drill));
  const onNeck = chords.filter((drill) => drill.kind !== 'trace');
  const unique = <T>(all: readonly T[]) => [...new Set(all)];
  const frets = onNeck.flatMap((drill) => drill.frets);
  return {
    instrument: deck.instrument,
    key: deck.key,
    phrases: deck.phrases.map(({ rulings = [], ...phrase }) => ({ phrase, rulings })),
    degrees: unique(chords.flatMap(({ degrees }) => degrees)).toSorted((a, b) => a - b),
    sizes: unique(chords.flatMap(({ sizes }) => sizes)),
    kinds: unique(drills.map(({ kind }) => kind)),
    ...(onNeck.length > 0 && {
      strings: unique(onNeck.flatMap(({ strings }) => strings.map((set) => set.join('-')))),
      frets: [Math.min(...frets), Math.max(...frets)],
    }),
  };
}

const AGAIN = ': once more';

function onceMore(title: string): string {
  return title.endsWith(AGAIN) ? title : title.slice(0, 80 - AGAIN.length) + AGAIN;
}

/** The same day of the week, the first that is not past. */
function weekAfter(lessonDay: string, now: number): string {
  let day = dayAfter(startOf(lessonDay), 7);
  while (daysUntil(day, now) < 0) day = dayAfter(startOf(day), 7);
  return day;
}
