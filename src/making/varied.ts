import { MOST } from '../decks/deck.ts';
import { fingeringByNote } from '../neck/fingering.ts';
import type { Incremental } from '../theory/incremental.ts';
import { placedByNote, positionsByNote, stringsByNote, type Placement } from '../neck/placement.ts';
import { sameChord } from '../theory/analysis/candidates.ts';
import { isToneRuling, type Ruling } from '../theory/analysis/ruling.ts';
import { chordOn } from '../theory/chord.ts';
import { byOctaves, phraseOf, sketchOf } from '../theory/editing.ts';
import type { Key } from '../theory/key.ts';
import type { Phrase } from '../theory/phrase.ts';
import { parentKey } from '../theory/scale.ts';
import { eachVariation, movedTo } from '../theory/variations/variations.ts';
import { withPlaces, type Explained } from './explained.ts';

/** Makes one phrase after another of a phrase; where nothing is made yet, it only pauses. */
export type Making = Generator<Placement | undefined, void>;

/** How many frets positions that are offered lie apart: as many as a hand spans without stretching. */
const APART = 4;

/** Other notes made from those of a phrase, in its key; those no hand can play or no deck can hold are left out. */
export function* varied({ phrase, key, instrument, analysis }: Explained): Making {
  for (const { name, says, phrase: other } of eachVariation(phrase, key, analysis)) {
    yield;
    if (other.notes.length > MOST.notes) continue;
    const there = yield* placedByNote(instrument, other);
    if (there) yield { name, says, phrase: there };
  }
}

/** The phrase on the same degrees of another key, an octave away where it does not fit on the neck otherwise. */
export function* inOtherKey({ phrase, key, instrument }: Explained, other: Key): Making {
  const { name, says, phrase: moved } = movedTo(phrase, key, other);
  for (const [octaves, where] of [
    [0, ''],
    [-1, ' So that it fits on the neck it lies an octave lower.'],
    [1, ' So that it fits on the neck it lies an octave higher.'],
  ] as const) {
    const there = yield* placedByNote(instrument, shifted(moved, octaves));
    if (!there) continue;
    yield { name, says: says + where, phrase: there };
    return;
  }
}

function shifted(phrase: Phrase, octaves: number): Phrase {
  return octaves === 0 ? phrase : phraseOf(byOctaves(sketchOf(phrase), octaves));
}

/** The rulings on a phrase as they hold where it is moved to another key: chords of the key go to its same degrees. */
export function rulingsMoved(rulings: readonly Ruling[], key: Key, other: Key): Ruling[] {
  return rulings.flatMap((ruling): Ruling[] => {
    if (isToneRuling(ruling) || !ruling.chord) return [ruling];
    const { degree, size } = ruling.chord;
    if (sameChord(chordOn(parentKey(key), degree, size), ruling.chord))
      return [{ ...ruling, chord: chordOn(parentKey(other), degree, size) }];
    return 'span' in ruling ? [{ span: ruling.span }] : [];
  });
}

/** The same notes elsewhere on the neck: on other strings, and in the easiest positions a hand's width apart. */
export function* elsewhere(explained: Explained): Making {
  if (explained.fault) return;
  const { instrument } = explained;
  const here = withPlaces(explained);
  yield* yield* stringsByNote(instrument, here);
  const positions: { one: Placement; cost: number }[] = [];
  for (const one of yield* positionsByNote(instrument, here))
    positions.push({ one, cost: yield* costOf(explained, one.phrase) });
  const chosen: Placement[] = [];
  for (const { one } of positions.toSorted((a, b) => a.cost - b.cost)) {
    const near = [here, ...chosen.map(({ phrase }) => phrase)].some(
      (other) => Math.abs(middleOf(other) - middleOf(one.phrase)) < APART,
    );
    if (!near) chosen.push(one);
  }
  yield* chosen;
}

function* costOf({ instrument }: Explained, phrase: Phrase): Incremental<number> {
  const found = yield* fingeringByNote(instrument, phrase.notes);
  return found.playable ? found.cost : Infinity;
}

/** The mean fret of a phrase whose notes all have places. */
function middleOf({ notes }: Phrase): number {
  return notes.reduce((sum, { place }) => sum + place!.fret, 0) / notes.length;
}
