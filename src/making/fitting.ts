/** Which kinds of card fit a lesson in the making, and what a phrase that is put in brings with it. */
import { itemsOf, KINDS } from '../cards/index.ts';
import type { KindName } from '../decks/deck.ts';
import { isPhraseKind, kindsOf } from '../decks/kinds.ts';
import {
  deckOf,
  drillOf,
  drillsOn,
  isTogether,
  withKinds,
  type Draft,
  type MadePhrase,
} from './draft.ts';
import { drillFault } from './draftFault.ts';

/**
 * Why cards of a kind that follows the form would ask nothing in this lesson; null where they ask something. Its phrases
 * are cut once for all kinds.
 */
export function nothingIn(made: Draft): (kind: KindName) => string | null {
  const deck = deckOf({ ...made, drills: [], marks: {} });
  return (kind) => {
    if (isPhraseKind(kind) && made.phrases.length === 0) return 'add a phrase first';
    const drill = drillOf(kind, made);
    const fault = drillFault(drill, made);
    if (fault) return fault.charAt(0).toLowerCase() + fault.slice(1).replace(/\.$/, '');
    return itemsOf({ ...deck, drills: [drill] }).length === 0 ? KINDS[kind].words.none : null;
  };
}

/**
 * What changes where a phrase is put in, at the end or before the one with the index `at`: drills on other phrases go on
 * with them, and kinds that ask something only now are switched on.
 */
export function withPhrase(
  made: Draft,
  one: MadePhrase,
  at = made.phrases.length,
): Pick<Draft, 'phrases' | 'drills'> {
  const phrases = made.phrases.toSpliced(at, 0, one);
  const drills = drillsOn(made.drills, (of) => of + Number(of >= at));
  return switchedOn(made, { ...made, phrases, drills });
}

/** What changes where a phrase takes another one's place. */
export function withPhraseChanged(
  made: Draft,
  one: MadePhrase,
  at: number,
): Pick<Draft, 'phrases' | 'drills'> {
  return switchedOn(made, { ...made, phrases: made.phrases.with(at, one) });
}

function switchedOn(before: Draft, made: Draft): Pick<Draft, 'phrases' | 'drills'> {
  const { phrases, drills } = made;
  const [was, is] = [nothingIn(before), nothingIn(made)];
  const fresh = kindsOf('phrase').filter(
    (kind) => !drills.includes(kind) && is(kind) === null && was(kind) !== null,
  );
  return { phrases, drills: withKinds(drills, [...drills.filter(isTogether), ...fresh]) };
}
