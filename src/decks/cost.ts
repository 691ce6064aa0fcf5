import { stringsSounding } from '../neck/sounded.ts';
import { arpeggiosOf, isWide } from './arpeggios.ts';
import { isPhraseDrill, isTimeDrill, MOST, type Deck, type Drill } from './deck.ts';

/**
 * What of a lesson takes too long to make cards of, on every start of every phone; null where nothing does. Each part is
 * small by itself: only together they are too much. `npm run lessons` prints what the costliest lessons cost that are taken:
 * finding places for a note costs as much as all else about it.
 */
export function costFault(deck: Pick<Deck, 'drills' | 'phrases' | 'instrument'>): string | null {
  const arpeggios = arpeggiosOf(deck.drills);
  if (arpeggios > MOST.arpeggios) {
    return `Drills: together they ask for ${arpeggios} arpeggios, and a lesson takes ${MOST.arpeggios}: choose fewer strings, chords or degrees, or make two lessons.`;
  }
  for (const drill of deck.drills) if (isWide(drill)) return WIDE;
  const pulses = deck.drills.reduce((sum, drill) => sum + pulsesOf(drill, deck), 0);
  if (pulses > MOST.pulses) {
    return `Drills: together they ask for ${pulses} figures, and a lesson takes ${MOST.pulses}: choose fewer tempos, or make two lessons.`;
  }
  const drilled = deck.phrases.filter((_, i) => isDrilled(i + 1, deck.drills));
  const notes = drilled.flatMap((phrase) => phrase.notes);
  const unplaced = drilled.flatMap((phrase) =>
    phrase.notes.every(({ place }) => place) ? [] : phrase.notes,
  );
  const counted = notes.length + unplaced.length;
  if (counted > MOST.drilledNotes) {
    const [twice, places] =
      unplaced.length === 0
        ? ['', '']
        : [', where those of phrases without all places count twice,', 'give them places, '];
    return `Phrases: those that are drilled come to ${counted} notes${twice} and a lesson takes ${MOST.drilledNotes}: ${places}drill fewer of them, or make two lessons.`;
  }
  const ways = unplaced.reduce(
    (sum, { midi }) => sum + stringsSounding(deck.instrument, midi) ** 2,
    0,
  );
  if (ways > MOST.ways) {
    return 'Phrases: too many strings sound the same notes: give them places.';
  }
  const rulings = deck.phrases.reduce((sum, { rulings: all = [] }) => sum + all.length, 0);
  return rulings > MOST.rulings ? rulingsFault(rulings) : null;
}

/** Said of so many rulings. */
export function rulingsFault(count: number): string {
  return `Phrases: ${count} entries say what they outline, and a lesson takes ${MOST.rulings}: take some out where Skipwise finds the same by itself.`;
}

function pulsesOf(drill: Drill, { phrases }: Pick<Deck, 'phrases'>): number {
  if (!isTimeDrill(drill)) return 0;
  const { figures, tempos, clicks } = drill;
  const named = figures.filter((figure) => figure !== 'phrase').length;
  const rhythms = figures.includes('phrase') ? phrases.length : 0;
  return (named + rhythms) * tempos.length * clicks.length;
}

const WIDE = 'Drills: an arpeggio is too large for so many strings: choose fewer.';

function isDrilled(number: number, drills: readonly Drill[]): boolean {
  return drills.some((drill) => isPhraseDrill(drill) && (drill.phrases?.includes(number) ?? true));
}
