/** What keeps a lesson in the making from being one, as a sentence that says what to do. */
import { costFault } from '../decks/cost.ts';
import {
  isPhraseDrill,
  isTimeDrill,
  MOST,
  type Drill,
  type EarDrill,
  type NeckDrill,
  type PlayDrill,
  type TimeDrill,
} from '../decks/deck.ts';
import { drillFormOf } from '../decks/drills/index.ts';
import { hasSevenNotes } from '../theory/scale.ts';
import { deckOf, drillOf, isTogether, standing, type Draft } from './draft.ts';

/** What keeps a draft from being a lesson; null where nothing does. */
export function draftFault(made: Draft): string | null {
  const drills = standing(made);
  if (drills.length === 0 && made.phrases.length === 0) {
    return 'Choose at least one kind of card, or add a phrase.';
  }
  if (drills.length > MOST.drills) {
    return `A lesson has at most ${MOST.drills} drills, not ${drills.length}: remove some, or choose fewer kinds of card.`;
  }
  const deck = deckOf({ ...made, marks: {} });
  for (const [index, drill] of drills.entries()) {
    const one = drillOf(drill, made);
    const fault = drillFault(one, made) ?? drillFormOf(one.kind).misfit(one, deck)?.says;
    if (fault) return isTogether(drill) ? fault : `Drill ${index + 1}: ${lowerFirst(fault)}`;
  }
  return costFault(deck) ?? marksFault(made);
}

/** Marks come in any number from the reports of a class. */
function marksFault(made: Draft): string | null {
  if (Object.keys(made.marks).length <= MOST.marks) return null;
  const { length } = Object.keys(deckOf(made).marks ?? {});
  return length > MOST.marks
    ? `A lesson has at most ${MOST.marks} items marked easy or hard, not ${length}: choose fewer degrees or string sets, or remove a drill.`
    : null;
}

/** What a drill lacks or has too many of; null where that is nothing. */
export function drillFault(
  drill: Drill,
  { key, phrases }: Pick<Draft, 'key' | 'phrases'>,
): string | null {
  if (isPhraseDrill(drill)) {
    if (phrases.length === 0) return 'Add a phrase to the lesson, or remove this drill.';
    const missing = drill.phrases?.find((number) => number > phrases.length);
    if (missing) return `There is no phrase ${missing} any more: choose others, or all.`;
    return drill.phrases?.length === 0 ? 'Choose at least one phrase.' : null;
  }
  if (isTimeDrill(drill)) return timeFault(drill, phrases.length);
  if (!hasSevenNotes(key.scale)) {
    return 'No chords stand on a scale of fewer than seven notes: choose another scale, or cards on the phrases alone.';
  }
  if (drill.degrees.length === 0) return 'Choose at least one degree.';
  if (drill.sizes.length === 0) return 'Choose at least one size of chord.';
  return 'contours' in drill ? earFault(drill) : neckFault(drill);
}

function neckFault({ strings, ...drill }: NeckDrill | PlayDrill): string | null {
  if ('ways' in drill && drill.ways.length === 0) return 'Choose at least one way to play it.';
  if (strings.length === 0) return 'Choose at least one string set.';
  return strings.length > MOST.stringSets
    ? `Choose at most ${MOST.stringSets} string sets: these are ${strings.length}.`
    : null;
}

function earFault({ contours }: Pick<EarDrill, 'contours'>): string | null {
  return contours.length === 0 ? 'Choose at least one contour.' : null;
}

function timeFault({ figures, tempos, clicks }: TimeDrill, phrases: number): string | null {
  if (phrases === 0 && figures.includes('phrase'))
    return 'Add a phrase to the lesson, or leave its rhythm out.';
  if (figures.length === 0) return 'Choose at least one figure.';
  if (tempos.length === 0) return 'Choose at least one tempo.';
  return clicks.length === 0 ? 'Choose when the click sounds.' : null;
}

function lowerFirst(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}
