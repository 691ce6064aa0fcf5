/** What sounds during a free minute. */
import type { Deck } from '../../decks/deck.ts';
import { explained } from '../../making/explained.ts';
import type { Sounding } from '../../sound/index.ts';
import { heldSounding } from '../../sound/key.ts';
import { SURE_READING } from '../../theory/analysis/analysis.ts';
import { chordOn } from '../../theory/chord.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { parentKey } from '../../theory/scale.ts';

/** The click alone; with it the tonic held; with it a chord a bar. */
export type Backing = 'click' | 'tonic' | 'round';

const BAR = 4;
const SECONDS = 60;
const LONGEST_ROUND = 8;
/** A note held by itself is no chord of a round. */
const LEAST_NOTES = 2;
/** A round where a lesson asks all seven degrees and has no phrase (common practice). */
const USUAL_ROUND = [1, 6, 2, 5];

/** So many bars are a minute. */
export const barsAt = (tempo: number): number => Math.ceil((tempo * SECONDS) / 60 / BAR);

/** What sounds beside the click, a minute long. */
export function backingSound(backing: Backing, deck: Deck, tempo: number): Sounding {
  if (backing === 'click') return { tempo, notes: [] };
  const degrees = backing === 'round' ? roundOf(deck) : [];
  return heldSounding(deck.key, degrees, barsAt(tempo), tempo);
}

/** The degrees that the first phrase goes through; without one those that the drills ask. */
export function roundOf(deck: Deck): readonly number[] {
  const [phrase] = deck.phrases;
  if (phrase) {
    const { groups } = explained(phrase, deck, phrase.rulings, phrase.hand).analysis;
    const sure = groups.filter(
      ({ from, to, confidence }) => confidence >= SURE_READING && to - from >= LEAST_NOTES,
    );
    const path = sure.map(({ chord }) => chord.degree);
    const moving = path.filter((degree, i) => degree !== path[i - 1]);
    if (moving.length > 1) return moving.slice(0, LONGEST_ROUND);
  }
  const asked = deck.drills.flatMap((drill) => ('degrees' in drill ? drill.degrees : []));
  const degrees = [...new Set(asked)];
  return degrees.length > 1 && degrees.length < 5 ? degrees : USUAL_ROUND;
}

/** `I vi ii V` */
export function roundWords(deck: Deck): string {
  const key = parentKey(deck.key);
  return roundOf(deck)
    .map((degree) => numeralLabel(chordOn(key, degree, 'triad')))
    .join(' ');
}
