import { isPhraseDrill, isTimeDrill, MOST, type Deck, type Drill } from './deck.ts';

/**
 * What of a lesson takes too long to make cards of, on every start of every phone; null where nothing does. Each part is
 * small by itself: only together they are too much. `npm run lessons` prints what the costliest lessons cost that are taken:
 * finding places for a note costs as much as all else about it.
 */
export function costFault(deck: Pick<Deck, 'drills' | 'phrases'>): string | null {
  const arpeggios = deck.drills.reduce((sum, drill) => sum + arpeggiosOf(drill), 0);
  if (arpeggios > MOST.arpeggios) {
    return `Drills: together they ask for ${arpeggios} arpeggios, each degree in each size on each string set or by each contour, and a lesson takes ${MOST.arpeggios}: choose fewer, or make two lessons.`;
  }
  const drilled = deck.phrases.filter((_, i) => isDrilled(i + 1, deck.drills));
  const notes = drilled.flatMap((phrase) => phrase.notes);
  const unplaced = drilled.flatMap((phrase) =>
    phrase.notes.every(({ place }) => place) ? [] : phrase.notes,
  );
  if (notes.length + unplaced.length > MOST.drilledNotes) {
    const twice =
      unplaced.length === 0
        ? ''
        : `, ${unplaced.length === notes.length ? 'all' : unplaced.length} of them in phrases without all places, which count twice,`;
    const places = unplaced.length === 0 ? '' : 'give them places, ';
    return `Phrases: those that are drilled have ${notes.length} notes together${twice} and a lesson takes ${MOST.drilledNotes}: ${places}drill fewer of them, or make two lessons.`;
  }
  const rulings = deck.phrases.reduce((sum, { rulings: all = [] }) => sum + all.length, 0);
  return rulings > MOST.rulings ? rulingsFault(rulings) : null;
}

/** Said of so many rulings. */
export function rulingsFault(count: number): string {
  return `Phrases: ${count} entries say what they outline, and a lesson takes ${MOST.rulings}: take some out where Skipwise finds the same by itself.`;
}

function arpeggiosOf(drill: Drill): number {
  if (isPhraseDrill(drill) || isTimeDrill(drill)) return 0;
  const ways = 'contours' in drill ? drill.contours.length : drill.strings.length * waysOf(drill);
  return drill.degrees.length * drill.sizes.length * ways;
}

const waysOf = (drill: object) =>
  'ways' in drill && Array.isArray(drill.ways) ? drill.ways.length : 1;

function isDrilled(number: number, drills: readonly Drill[]): boolean {
  return drills.some((drill) => isPhraseDrill(drill) && (drill.phrases?.includes(number) ?? true));
}
