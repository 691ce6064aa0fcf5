import teoria from 'teoria';
import { describe, expect, it } from 'vitest';
import { itemsOf, KINDS } from '../../src/cards/index.ts';
import type { PlacingCard } from '../../src/cards/arpeggio/placing.ts';
import type { SpotCard } from '../../src/cards/spot/ask.ts';
import { seeded } from '../../src/theory/random.ts';
import { deckIn } from '../cards/decks.ts';

/**
 * What is drawn and what is judged right, held against chords built by teoria 2.5.0 (an independent library): thirds of
 * its own major and minor scales.
 */
const KEYS = [
  'C',
  'G',
  'D',
  'A',
  'E',
  'B',
  'F#',
  'C#',
  'F',
  'Bb',
  'Eb',
  'Ab',
  'Db',
  'Gb',
  'Cb',
].flatMap((tonic) => [`${tonic} major`, `${tonic} minor`]);
const NOTES = { triad: 3, seventh: 4, ninth: 5 };

/** MIDI numbers of the open strings in standard tuning, strings 1 to 6: Radicioni & Lombardo, ICMC 2005, Fig. 1. */
const OPEN = [64, 59, 55, 50, 45, 40];

/** Pitch classes of the chord on a degree, from teoria's scale. */
function chromasOf(key: string, degree: number, count: number): number[] {
  const [tonic, kind] = key.split(' ') as [string, 'major' | 'minor'];
  const scale = teoria
    .note(tonic)
    .scale(kind === 'minor' ? 'aeolian' : 'major')
    .notes();
  return Array.from({ length: count }, (_, third) => scale[(degree - 1 + 2 * third) % 7]!.chroma());
}

describe.each(KEYS)('every degree and size of %s', (key) => {
  const items = itemsOf(deckIn(key, ['triad', 'seventh', 'ninth'])).filter(
    ({ kind }) => kind !== 'trace',
  );
  const expected = (item: { id: string; degree: number }) =>
    new Set(chromasOf(key, item.degree, NOTES[item.id.split(':')[3] as keyof typeof NOTES]));

  it('spot draws the chord and judges its degree right, no other', () => {
    const spots = items.filter(({ kind }) => kind === 'spot');
    expect(new Set(spots.map(({ degree }) => degree)).size).toBe(7);
    for (const item of spots) {
      const card = KINDS.spot.ask(item, item.id.length) as SpotCard;
      const drawn = card.shape.places.map(({ string, fret }) => (OPEN[string - 1]! + fret) % 12);
      expect(new Set(drawn), item.id).toEqual(expected(item));
      const right = [1, 2, 3, 4, 5, 6, 7].filter((n) => KINDS.spot.judge(card, String(n)).right);
      expect(right).toEqual([item.degree]);
    }
  });

  it('place judges right exactly the sets that hold the chord’s notes', () => {
    const random = seeded(20261125);
    for (const item of items.filter(({ kind }) => kind === 'place')) {
      const card = KINDS.place.ask(item, 1) as PlacingCard;
      const chromas = expected(item);
      const [low, high] = card.frets;
      for (let tries = 0; tries < 12; tries++) {
        // Half of the sets are drawn from the chord's own places, half from anywhere.
        const all = card.stringSet.flatMap((string) =>
          Array.from({ length: high - low + 1 }, (_, i) => ({ string, fret: low + i })),
        );
        const chroma = ({ string, fret }: { string: number; fret: number }) =>
          (OPEN[string - 1]! + fret) % 12;
        const from = tries % 2 ? all : all.filter((place) => chromas.has(chroma(place)));
        const set = random.shuffle(from).slice(0, chromas.size);
        const complete =
          new Set(set.map(chroma)).size === chromas.size &&
          set.every((p) => chromas.has(chroma(p)));
        const answer = set.map(({ string, fret }) => `${string}/${fret}`).join(' ');
        expect(KINDS.place.judge(card, answer).right, `${item.id} ${answer}`).toBe(complete);
      }
    }
  });
});
