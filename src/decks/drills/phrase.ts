import * as v from 'valibot';
import { MOST, type Deck, type PhraseDrill } from '../deck.ts';
import { list, objectFault, whole } from '../fields.ts';
import { kindsOf, type KindName } from '../kinds.ts';
import { bounds, type DrillForm, type Extent, type Misfit } from './drillForm.ts';

/** What a document says of it beside its kind. */
export function phraseEntries(extent: Extent) {
  const { least, most } = bounds(extent, MOST.phrases);
  return {
    phrases: v.exactOptional(
      list(
        whole(1, most, 'the number of each phrase'),
        most,
        'list the numbers of different phrases, like [1, 3], or leave them out for all',
        least,
      ),
    ),
  };
}

function schema(extent: Extent) {
  return v.strictObject(
    { kind: v.picklist(kindsOf('phrase')), ...phraseEntries(extent) },
    objectFault,
  );
}
type Written = v.InferInput<ReturnType<typeof schema>>;

/** Inverts `phraseEntries`. */
export function writePhrases({ phrases }: Omit<PhraseDrill, 'kind'>): Omit<Written, 'kind'> {
  return { ...(phrases && { phrases: [...phrases] }) };
}

/** In a link its phrases in base 36, none where it has all: `13`. */
export const phrase = {
  schema,
  write: (drill) => ({ kind: drill.kind, ...writePhrases(drill) }),
  fold: ({ phrases = [] }: Omit<Written, 'kind'>) =>
    phrases.map((number) => number.toString(36)).join(''),
  unfold(letters: string) {
    const phrases = Array.from(letters.split('.')[0]!, (number) => Number.parseInt(number, 36));
    return phrases.length > 0 ? { phrases } : {};
  },
  misfit(
    { kind, phrases: chosen }: PhraseDrill<KindName>,
    { phrases: { length } }: Deck,
  ): Misfit | null {
    if (length === 0) {
      return {
        says: `“${kind}” drills the lesson’s phrases, and there is none: add a phrase, or take this drill out.`,
      };
    }
    const absent = chosen?.find((number) => number > length);
    if (absent === undefined) return null;
    const has = length === 1 ? 'one phrase' : `${length} phrases`;
    return { word: 'phrases', says: `the lesson has ${has}, so there is no phrase ${absent}.` };
  },
  between: () => ' ',
} satisfies DrillForm<PhraseDrill, Written>;
