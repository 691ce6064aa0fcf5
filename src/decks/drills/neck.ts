import * as v from 'valibot';
import { fretsLeft } from '../../neck/instrument.ts';
import { SHAPE_CHOICES } from '../../neck/shapeChoice.ts';
import { MOST, type Deck, type NeckDrill } from '../deck.ts';
import { line, list, objectFault, oneOf, readBy, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { chordEntries, chordsMisfit, foldChords } from './chords.ts';
import { readStringSet, unfoldNeck, writeNeck } from './chordWords.ts';
import { bounds, type DrillForm, type Extent, type Misfit } from './drillForm.ts';

const FRETS = 'give the lowest and the highest fret, like [2, 10]';

/** What a document says of it beside its kind: degrees, sizes, string sets like `5-4`, the lowest and highest fret. */
export function neckEntries(extent: Extent) {
  const { least, most } = bounds(extent, MOST.stringSets);
  return {
    ...chordEntries(extent),
    strings: list(
      v.pipe(
        line(20),
        readBy(readStringSet, 'write a string set from the highest string number down, like "5-4"'),
      ),
      most,
      'list different string sets, like ["5-4", "4-3"]',
      least,
    ),
    frets: v.pipe(
      v.strictTuple([whole(0, 27, 'each fret'), whole(0, 27, 'each fret')], FRETS),
      v.check(([low, high]) => low <= high, FRETS),
    ),
    shapes: v.exactOptional(oneOf(SHAPE_CHOICES, 'the shapes')),
  };
}

function schema(extent: Extent) {
  return v.strictObject({ kind: v.picklist(kindsOf('neck')), ...neckEntries(extent) }, objectFault);
}
type Written = v.InferInput<ReturnType<typeof schema>>;

export const neck = {
  schema,
  write: (drill) => ({ kind: drill.kind, ...writeNeck(drill) }),
  fold: (written: Omit<Written, 'kind'>) =>
    foldChords(
      written,
      written.strings.map((set) => set.replaceAll('-', '')).join(),
      written.frets.map((fret) => fret.toString(36)).join('') + (written.shapes?.[0] ?? ''),
    ),
  unfold: unfoldNeck,
  misfit: (drill: Omit<NeckDrill, 'kind'>, deck: Deck) =>
    chordsMisfit(deck) ?? lyingMisfit(drill, deck),
  between: () => ':',
} satisfies DrillForm<NeckDrill, Written>;

function lyingMisfit(
  { strings, frets }: Omit<NeckDrill, 'kind'>,
  { instrument }: Deck,
): Misfit | null {
  const { name, tuning, capo } = instrument;
  const missing = strings.flat().find((string) => string > tuning.length);
  if (missing !== undefined) {
    const says = `the ${name} has ${tuning.length} strings, so there is no string ${missing}.`;
    return { word: 'strings', says };
  }
  const highest = fretsLeft(instrument);
  if (frets[1] <= highest) return null;
  const end = `fret ${highest}${capo ? ' above the capo' : ''}`;
  return { word: 'frets', says: `the ${name} ends at ${end}: end there or lower.` };
}
