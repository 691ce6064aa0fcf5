import * as v from 'valibot';
import { CONTOURS, RHYTHMS, type EarDrill } from '../deck.ts';
import { list, objectFault, oneOf, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { chordEntries, chordsMisfit, foldChords, unfoldChords, writeChords } from './chords.ts';
import { bounds, type DrillForm, type Extent } from './form.ts';

function schema(extent: Extent) {
  return v.strictObject(
    {
      kind: v.picklist(kindsOf('ear')),
      ...chordEntries(extent),
      contours: list(
        oneOf(CONTOURS, 'each contour'),
        CONTOURS.length,
        'list different contours, like ["up", "down"]',
        bounds(extent, CONTOURS.length).least,
      ),
      tempo: whole(30, 240, 'the tempo'),
      rhythm: v.exactOptional(oneOf(RHYTHMS, 'the rhythm')),
    },
    objectFault,
  );
}
type Written = v.InferInput<ReturnType<typeof schema>>;

/** In a link a letter for each contour and an `e` behind the tempo for eighths: `0.udts.72e`. */
export const ear = {
  schema,
  write: (drill) => ({
    kind: drill.kind,
    ...writeChords(drill),
    contours: [...drill.contours],
    tempo: drill.tempo,
    ...(drill.rhythm === 'eighths' && { rhythm: drill.rhythm }),
  }),
  fold: (written) =>
    foldChords(
      written,
      written.contours.map((contour) => contour[0]).join(''),
      `${written.tempo}${written.rhythm?.[0] ?? ''}`,
    ),
  unfold(letters) {
    const { chords, what, range } = unfoldChords(letters);
    return {
      ...chords,
      contours: [...what].map((letter) => CONTOURS.find((contour) => contour[0] === letter)),
      tempo: Number(range.replace(/e$/, '')),
      ...(range.endsWith('e') && { rhythm: 'eighths' }),
    };
  },
  misfit: (_drill, deck) => chordsMisfit(deck),
  between: ':',
} satisfies DrillForm<EarDrill, Written>;
