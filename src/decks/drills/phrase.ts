import * as v from 'valibot';
import { MOST, type PhraseDrill } from '../deck.ts';
import { list, objectFault, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { bounds, type DrillForm, type Extent } from './form.ts';

function schema(extent: Extent) {
  const { least, most } = bounds(extent, MOST.phrases);
  return v.strictObject(
    {
      kind: v.picklist(kindsOf('phrase')),
      phrases: v.exactOptional(
        list(
          whole(1, most, 'the number of each phrase'),
          most,
          'list the numbers of different phrases, like [1, 3], or leave them out for all',
          least,
        ),
      ),
    },
    objectFault,
  );
}
type Written = v.InferInput<ReturnType<typeof schema>>;

/** In a link its phrases in base 36, none where it has all: `13`. */
export const phrase = {
  schema,
  write: ({ kind, phrases }) => ({ kind, ...(phrases && { phrases: [...phrases] }) }),
  fold: ({ phrases = [] }) => phrases.map((number) => number.toString(36)).join(''),
  unfold(letters) {
    const phrases = Array.from(letters.split('.')[0]!, (number) => Number.parseInt(number, 36));
    return phrases.length > 0 ? { phrases } : {};
  },
  misfit({ kind, phrases: chosen }, { phrases: { length } }) {
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
  between: ' ',
} satisfies DrillForm<PhraseDrill, Written>;
