import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  choiceText,
  fingeringOptions,
  parseChoice,
  type HandChoice,
} from '../../src/neck/choice.ts';
import { type ShapeChoice, takesLowest } from '../../src/neck/shapeChoice.ts';
import { fingering, type LineNote } from '../../src/neck/fingering.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { placed, placedAsByNote } from '../../src/neck/placement.ts';
import { finished } from '../../src/theory/incremental.ts';
import { spell } from '../../src/theory/spell.ts';
import { beats } from '../../src/theory/rhythm.ts';

/** G B D G B D, in triplets: all over the neck, and mostly open at the nut. */
const MIDI = [55, 59, 62, 67, 59, 62];
const notes = MIDI.map((midi, i): LineNote & { name: string } => ({
  midi,
  name: spell({ tonic: 'G', scale: 'major' }, midi),
  at: beats(i, 3),
  length: beats(1, 3),
}));
const phrase = { tempo: 72, notes };

function played(choice?: HandChoice) {
  const found = fingering(GUITAR, notes, fingeringOptions(choice));
  if (!found.playable) throw new Error(found.reason);
  return found.notes;
}

test('a movable phrase has no open string', () => {
  expect(played('movable').every(({ fret }) => fret > 0)).toBe(true);
});

test('at a fret the index finger stays there', () => {
  for (const fret of [3, 7]) {
    const there = played(fret);
    expect(new Set(there.map(({ hand }) => hand))).toEqual(new Set([fret]));
    expect(there.every((note) => note.fret > 0)).toBe(true);
  }
});

test('with open strings every note that an open string sounds is open', () => {
  const open = played('open strings').filter(({ fret }) => fret === 0);
  expect(open).toHaveLength(MIDI.filter((midi) => [50, 55, 59].includes(midi)).length);
});

const as = (choice: HandChoice) => finished(placedAsByNote(GUITAR, phrase, choice));

test('a phrase that cannot lie so lies as it lies best', () => {
  expect(as(18)).toEqual(placed(GUITAR, phrase));
  expect(as('movable')).not.toEqual(as('open strings'));
});

test('a choice reads back from its text, and no other text does', () => {
  const choice = fc.oneof(
    fc.constantFrom<HandChoice[]>('movable', 'open strings'),
    fc.integer({ min: 1, max: 24 }),
  );
  fc.assert(
    fc.property(choice, (one) => {
      expect(parseChoice(choiceText(one))).toBe(one);
    }),
  );
  for (const text of [
    '',
    'at fret 0',
    'at fret 25',
    'at fret',
    'now at fret 5',
    'at fret 5 or so',
    'at fret 123',
    'Movable',
    'constructor',
    '__proto__',
  ])
    expect(parseChoice(text)).toBeNull();
});

test('shapes in root position have the root lowest, inversions any other, and any will do where none was chosen', () => {
  const members = [1, 3, 5, 7] as const;
  const taken = (choice?: ShapeChoice) => members.filter((member) => takesLowest(choice, member));
  expect(taken('root position')).toEqual([1]);
  expect(taken('inversions')).toEqual([3, 5, 7]);
  expect(taken()).toEqual([1, 3, 5, 7]);
});
