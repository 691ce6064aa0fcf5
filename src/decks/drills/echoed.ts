import * as v from 'valibot';
import { isPhraseDrill, type Deck, type Drills } from '../deck.ts';
import { objectFault } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { writeEar } from './chordWords.ts';
import { ear, earEntries } from './ear.ts';
import type { DrillForm, Extent } from './drillForm.ts';
import { behindStar, between, foldPhrases } from './orPhrases.ts';
import { phrase, phraseEntries, writePhrases } from './phrase.ts';

const KIND = v.picklist(kindsOf('echoed'));

/** Of the degrees of the key. */
export function echoedByEar(extent: Extent) {
  return v.strictObject({ kind: KIND, ...earEntries(extent) }, objectFault);
}

/** Of the deck's phrases. */
export function echoedFromPhrases(extent: Extent) {
  return v.strictObject({ kind: KIND, ...phraseEntries(extent) }, objectFault);
}

type Written =
  v.InferInput<ReturnType<typeof echoedByEar>> | v.InferInput<ReturnType<typeof echoedFromPhrases>>;

/** In a link as drills by ear, or from phrases with a star before them. */
export const echoed = {
  schema: (extent) => v.union([echoedByEar(extent), echoedFromPhrases(extent)]),
  write: (drill) =>
    isPhraseDrill(drill)
      ? { kind: drill.kind, ...writePhrases(drill) }
      : { kind: drill.kind, ...writeEar(drill) },
  fold: (written) => ('contours' in written ? ear.fold(written) : foldPhrases(written)),
  unfold(letters) {
    const starred = behindStar(letters);
    return starred === null ? ear.unfold(letters) : phrase.unfold(starred);
  },
  misfit: (drill, deck: Deck) =>
    isPhraseDrill(drill) ? phrase.misfit(drill, deck) : ear.misfit(drill, deck),
  between,
} satisfies DrillForm<Drills['echoed'], Written>;
