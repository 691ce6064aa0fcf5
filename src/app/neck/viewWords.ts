import { listed } from '../../parts/english.ts';
import { sharedNotes, type Chord } from '../../theory/chord.ts';
import {
  chordLabel,
  inversionLabel,
  keyLabel,
  noteLabel,
  numeralLabel,
  type Naming,
} from '../../theory/naming.ts';
import { parsePitch, type NoteName } from '../../theory/note.ts';
import { chordsOf } from './dots.ts';
import { bends, fingersOf, shapeOf } from './shape.ts';
import { stringsOf, type View, type Where } from './view.ts';

/** What the neck shows: `B♭ major`, `ii of B♭ major: Cm`. */
export function viewTitle(view: View, naming: Naming): string {
  const { chord } = chordsOf(view);
  const key = keyLabel(view.key, naming);
  return chord ? `${numeralLabel(chord)} of ${key}: ${chordLabel(chord, naming)}` : key;
}

/** A step from one arpeggio to another, as the notes that stay, go and come. */
interface StepWords {
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

/** What is said of one shape, a sentence each: its inversion; a barre, where fingers are shown; why it bends. */
export function shapeSentences(view: View, naming: Naming): string[] {
  const shape = shapeOf(view);
  if (!shape) return [];
  const chord = chordsOf(view).chord!;
  const { inversion } = shape;
  const said = [`${chordLabel(chord, naming, inversion)}, ${inversionLabel(inversion)}.`];
  const { barre } = fingersOf(view.instrument, chord, shape);
  if (view.shown === 'fingers' && barre.length > 0)
    said.push(`Barre: the index finger lies across strings ${barre[0]}–${barre.at(-1)}.`);
  const bent = bends(view);
  return bent ? [...said, bent.sentence] : said;
}

/** `everything`, `frets 5–9`, `strings 5–4`, `shape 5–4–3`. */
export function whereWords(where: Where): string {
  if (where === null) return 'everything';
  if ('shape' in where) return shapeOn(stringsOf(where.shape));
  return 'frets' in where ? `frets ${where.frets.join('–')}` : `strings ${where.strings.join('–')}`;
}

/** What the choice of one shape on a string set is called. */
export function shapeOn(strings: readonly number[]): string {
  return `shape ${strings.join('–')}`;
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
    ...shapeSentences(view, naming),
    step && `${step.from}: ${step.parts.map(({ words }) => words).join(', ')}`,
  ]
    .filter(Boolean)
    .join(' · ');
}
