import * as v from 'valibot';
import { fretsLeft } from '../../neck/instrument.ts';
import { SHAPE_CHOICES } from '../../neck/choice.ts';
import { MOST, type Deck, type NeckDrill } from '../deck.ts';
import { line, list, objectFault, oneOf, readBy, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { chordEntries, chordsMisfit, foldChords, unfoldChords, writeChords } from './chords.ts';
import { bounds, type DrillForm, type Extent, type Misfit } from './drillForm.ts';

/** The version of the deck document in which a drill first says which shapes it asks for. */
export const SHAPES_SINCE = 4;

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

/** Inverts `neckEntries`. */
export function writeNeck(drill: Omit<NeckDrill, 'kind'>): Omit<Written, 'kind'> {
  return {
    ...writeChords(drill),
    strings: drill.strings.map((set) => set.join('-')),
    frets: [...drill.frets],
    ...(drill.shapes && { shapes: drill.shapes }),
  };
}

/** In a link string sets without dashes, frets in base 36 and a letter for chosen shapes: `01.54,43.2a`, `01.54,43.2ar`. */
export const neck = {
  schema,
  write: (drill) => ({ kind: drill.kind, ...writeNeck(drill) }),
  fold: (written: Omit<Written, 'kind'>) =>
    foldChords(
      written,
      written.strings.map((set) => set.replaceAll('-', '')).join(),
      written.frets.map((fret) => fret.toString(36)).join('') + (written.shapes?.[0] ?? ''),
    ),
  unfold(letters: string) {
    const { chords, what, range } = unfoldChords(letters);
    const strings = what.split(',').map((set) => [...set].join('-'));
    const [frets, letter] = [range.slice(0, 2), range.slice(2)];
    return {
      ...chords,
      strings,
      frets: [...frets].map((fret) => Number.parseInt(fret, 36)),
      ...(letter && { shapes: SHAPE_CHOICES.find((choice) => choice[0] === letter) }),
    };
  },
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

function readStringSet(written: string): readonly number[] | null {
  if (!/^[1-9](?:[-–][1-9]){0,8}$/.test(written)) return null;
  const strings = written.split(/[-–]/).map(Number);
  return strings.every((string, i) => i === 0 || string < (strings[i - 1] ?? 0)) ? strings : null;
}
