import { expect, it } from 'vitest';
import { explained } from '../../src/making/explained.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { midiAt } from '../../src/neck/place.ts';
import { parsePlace } from '../../src/neck/placeText.ts';
import { beats } from '../../src/theory/rhythm.ts';

it.each([
  ['5/1 4/1 5/2', []],
  // The hand goes up while an open string sounds: before the note that it presses there.
  ['5/1 4/0 5/8', [2]],
  ['5/1 4/0 3/0 5/9 4/0 5/1', [3, 5]],
  ['5/8 4/8 5/1', [2]],
])('of %s the hand goes to another fret before %j', (places, shifts) => {
  const notes = places.split(' ').map((text, i) => {
    const place = parsePlace(text)!;
    const midi = midiAt(GUITAR, place);
    return { midi, name: 'C', at: beats(i), length: beats(1), place };
  });
  const key = { tonic: 'Bb', scale: 'major' } as const;
  expect(explained({ tempo: 72, notes }, { key, instrument: GUITAR }).shifts).toEqual(shifts);
});
