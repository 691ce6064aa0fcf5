import { listed } from '../../cards/arpeggio.ts';
import { sharedNotes } from '../../theory/leading.ts';
import type { Chord } from '../../theory/chord.ts';
import { chordLabel, keyLabel, noteLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { parsePitch, type NoteName } from '../../theory/note.ts';
import { chordsOf } from './dots.ts';
import type { View, Where } from './view.ts';

/** What the neck shows: `B♭ major`, `ii of B♭ major: Cm`. */
export function titleOf(view: View, naming: Naming): string {
  const { chord } = chordsOf(view);
  const key = keyLabel(view.key, naming);
  return chord ? `${numeralLabel(chord)} of ${key}: ${chordLabel(chord, naming)}` : key;
}

/** A step from one arpeggio to another, as the notes that stay, go and come. */
export interface StepWords {
  /** `ii to IV` */
  readonly from: string;
  /** What is said of each lot of notes that is not empty, and what its dots look like. */
  readonly parts: readonly { readonly look: 'stays' | 'goes' | 'comes'; readonly words: string }[];
}

/** Which notes stay from one chord to the next, and which go and come. */
export function stepWords(former: Chord, chord: Chord, naming: Naming): StepWords {
  const stay = sharedNotes(former, chord);
  const go = former.notes.filter((note) => !stay.includes(note));
  const come = chord.notes.filter((note) => !stay.includes(note));
  const parts = [
    { look: 'stays' as const, words: said(stay, 'stay') },
    { look: 'goes' as const, words: said(go, 'go') },
    { look: 'comes' as const, words: said(come, 'come') },
  ].filter(({ words }) => words !== '');
  return { from: `${numeralLabel(former)} to ${numeralLabel(chord)}`, parts };

  function said(notes: readonly NoteName[], verb: string): string {
    if (notes.length === 0) return '';
    const third = verb === 'go' ? 'goes' : `${verb}s`;
    const names = notes.map((note) => noteLabel(note, naming, chord.key));
    return `${listed(names)} ${notes.length === 1 ? third : verb}`;
  }
}

/** `everything`, `frets 5–9`, `strings 5–4`. */
export function whereWords(where: Where): string {
  if (where === null) return 'everything';
  return 'frets' in where ? `frets ${where.frets.join('–')}` : `strings ${where.strings.join('–')}`;
}

/** What stands under the title of a printed sheet, a sentence a thing. */
export function sheetWords(view: View, naming: Naming): string {
  const { instrument, shown, where } = view;
  const { chord, former } = chordsOf(view);
  const strings = instrument.tuning.map((pitch) => parsePitch(pitch)!.name);
  const absolute = naming === 'movable' || naming === 'degrees' ? 'english' : naming;
  const step = chord && former && stepWords(former, chord, naming);
  return [
    `${instrument.name}: ${strings.map((note) => noteLabel(note, absolute, view.key)).join(' ')}`,
    instrument.capo > 0 && `capo on fret ${instrument.capo}, frets counted from it`,
    where && whereWords(where),
    shown !== 'nothing' && `${shown} on the dots`,
    step && `${step.from}: ${step.parts.map(({ words }) => words).join(', ')}`,
  ]
    .filter(Boolean)
    .join(' · ');
}
