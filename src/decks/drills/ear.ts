import * as v from 'valibot';
import { fretsLeft, openMidi } from '../../neck/instrument.ts';
import { CONTOURS, RHYTHMS, TEMPOS, type Deck, type EarDrill } from '../deck.ts';
import { list, objectFault, oneOf, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { chordEntries, chordsMisfit, foldChords } from './chords.ts';
import { unfoldEar, writeEar } from './chordWords.ts';
import { bounds, type DrillForm, type Extent, type Misfit } from './drillForm.ts';

/** What a document says of it beside its kind. */
export function earEntries(extent: Extent) {
  return {
    ...chordEntries(extent),
    contours: list(
      oneOf(CONTOURS, 'each contour'),
      CONTOURS.length,
      'list different contours, like ["up", "down"]',
      bounds(extent, CONTOURS.length).least,
    ),
    tempo: whole(...TEMPOS, 'the tempo'),
    rhythm: v.exactOptional(oneOf(RHYTHMS, 'the rhythm')),
  };
}

function schema(extent: Extent) {
  return v.strictObject({ kind: v.picklist(kindsOf('ear')), ...earEntries(extent) }, objectFault);
}
type Written = v.InferInput<ReturnType<typeof schema>>;

export const ear = {
  schema,
  write: (drill) => ({ kind: drill.kind, ...writeEar(drill) }),
  fold: (written: Omit<Written, 'kind'>) =>
    foldChords(
      written,
      written.contours.map((contour) => contour[0]).join(''),
      `${written.tempo}${written.rhythm?.[0] ?? ''}`,
    ),
  unfold: unfoldEar,
  misfit: (_drill: unknown, deck: Deck) => chordsMisfit(deck) ?? compassMisfit(deck),
  between: () => ':',
} satisfies DrillForm<EarDrill, Written>;

/** A line to be heard needs room on the neck: an octave holds every arpeggio, shifted as need be. */
function compassMisfit({ instrument }: Deck): Misfit | null {
  const open = openMidi(instrument);
  const compass = Math.max(...open) - Math.min(...open) + fretsLeft(instrument);
  if (compass >= 12) return null;
  const says = `the ${instrument.name} spans ${compass} ${compass === 1 ? 'semitone' : 'semitones'}${instrument.capo ? ' above the capo' : ''}, too few for a phrase to be heard: ${instrument.capo ? 'put the capo lower' : 'tune its strings apart'}, or take this drill out.`;
  return { says };
}
