import { type Deck } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { readDeck } from '../../src/decks/document.ts';

/** Down and up the harbour stairs: ii, V, I and vi, twice through, with a passing tone on the way. */
export const STAIRS = {
  tempo: 72,
  notes: [
    'C4 for 1/3 on 3/5',
    'Eb4 on 2/4',
    'G4 on 1/3',
    'A4 on 1/5',
    'F4 on 1/1',
    'C4 on 2/1',
    'D4 on 2/3',
    'Bb3 on 3/3',
    'F3 on 4/3',
    'G3 on 4/5',
    'Bb3 on 3/3',
    'D4 on 2/3',
    'Eb4 on 2/4',
    'C4 on 2/1',
    'G3 on 4/5',
    'A3 on 3/2',
    'C4 on 3/5',
    'Eb4 on 2/4',
    'D4 for 1 on 2/3',
  ],
  outline: ['1-3 ii', '4-6 V', '7-9 I', '10-12 vi', '13-15 ii', '16-18 vii'],
};

/** Without places, in quarters and eighths, with a rest. */
export const FERRY = {
  tempo: 96,
  notes: [
    'G3 for 1/2',
    'Bb3',
    'D4',
    'Bb3',
    'A3 at 3',
    'C4',
    'F4',
    'Eb4',
    'C4 for 1',
    'G3 for 1/2',
    'Eb4',
    'Bb3 for 2',
  ],
};

/** A deck with phrases and a drill of each kind that is drilled from them. */
export function phraseDeck(change: object = {}): Deck {
  const read = readDeck({
    version: 1,
    title: 'Thursday class: down the harbour stairs',
    key: 'Bb major',
    drills: [...kindsOf('phrase'), 'play', 'echo'].map((kind) => ({ kind })),
    phrases: [STAIRS, FERRY],
    ...change,
  });
  if ('fault' in read) throw new Error(read.fault);
  return read.deck;
}
