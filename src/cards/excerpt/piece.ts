/** A phrase of a deck as its cards take it: placed, read and cut into arpeggios. */
import { isPhraseDrill, type Deck, type Drill, type TaughtPhrase } from '../../decks/deck.ts';
import type { Instrument } from '../../neck/instrument.ts';
import { placedAsByNote } from '../../neck/placement.ts';
import { readGroups, SURE_READING, type ReadGroup } from '../../theory/analysis/analysis.ts';
import { tonesRuled } from '../../theory/analysis/enforced.ts';
import type { Ruling } from '../../theory/analysis/ruling.ts';
import { memberOf } from '../../theory/chord.ts';
import { finished, type Incremental } from '../../theory/incremental.ts';
import type { Key } from '../../theory/key.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { parentKey } from '../../theory/scale.ts';
import { memberIn, type Outlined, type PlacedNote } from './excerpt.ts';

/** A phrase of a deck, every note with its place, cut into the arpeggios that it outlines. */
export interface Piece {
  readonly key: Key;
  readonly instrument: Instrument;
  readonly tempo: number;
  readonly notes: readonly PlacedNote[];
  readonly groups: readonly PieceGroup[];
}

export interface PieceGroup extends Outlined {
  /** Whether it can be asked which arpeggio it is: that is known surely enough, and two of its notes tell it. */
  readonly clear: boolean;
}

const known = new WeakMap<
  TaughtPhrase,
  { of: Pick<Deck, 'key' | 'instrument'>; piece: Piece | null }
>();

/** Null where no hand can play the phrase. Reckoned once for a phrase of a deck: each kind of drill asks for it. */
export function pieceOf(phrase: TaughtPhrase, of: Pick<Deck, 'key' | 'instrument'>): Piece | null {
  return finished(pieceByNote(phrase, of));
}

/** Reckons beforehand, with pauses, what a drill of phrases takes long for. */
export function* prepare(deck: Deck, drill: Drill): Incremental<void> {
  if (!isPhraseDrill(drill)) return;
  for (const number of drill.phrases ?? deck.phrases.map((_, i) => i + 1)) {
    const phrase = deck.phrases[number - 1];
    if (phrase) yield* pieceByNote(phrase, deck);
  }
}

function* pieceByNote(
  phrase: TaughtPhrase,
  { key, instrument }: Pick<Deck, 'key' | 'instrument'>,
): Incremental<Piece | null> {
  const before = known.get(phrase);
  if (before?.of.key === key && before.of.instrument === instrument) return before.piece;
  const there = phrase.notes.every(({ place }) => place)
    ? phrase
    : yield* placedAsByNote(instrument, phrase, phrase.hand);
  const { rulings = [] } = phrase;
  const piece =
    there &&
    divided(there, yield* readGroups(phrase, key, { rulings }), rulings, { key, instrument });
  known.set(phrase, { of: { key, instrument }, piece });
  return piece;
}

/** A phrase whose notes have places, cut into groups. */
function divided(
  { notes: placed, tempo }: Phrase,
  groups: readonly ReadGroup[],
  rulings: readonly Ruling[],
  { key, instrument }: Pick<Deck, 'key' | 'instrument'>,
): Piece {
  const tones = tonesRuled(rulings);
  const notes = groups.flatMap(({ chord, from, to }) =>
    (placed as readonly PlacedNote[]).slice(from, to).map((note, i): PlacedNote => {
      const ruled = Boolean(tones.get(from + i)) && memberOf(chord, note.midi) !== null;
      return ruled ? { ...note, embellishes: true } : note;
    }),
  );
  return {
    key: parentKey(key),
    instrument,
    tempo,
    notes,
    groups: groups.map(({ chord, from, to, confidence }) => {
      const group = { chord, from, to };
      return { ...group, clear: confidence >= SURE_READING && hasArpeggio(notes, group) };
    }),
  };
}

/** Whether two members of its arpeggio are among the notes of a group: fewer are no arpeggio. */
export function hasArpeggio(notes: readonly PlacedNote[], { chord, from, to }: Outlined): boolean {
  const members = notes.slice(from, to).flatMap((note) => memberIn(chord, note) ?? []);
  return new Set(members).size >= 2;
}
