/** Names that every object has: whoever writes one where a name is looked up gets a sentence, and nothing is found. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Deck } from '../../src/decks/deck.ts';
import { readDeck, writeDeck } from '../../src/decks/document.ts';
import { sealLink } from '../../src/decks/seal.ts';
import { readLink } from '../../src/decks/link.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { readInstrument } from '../../src/decks/instrument.ts';
import { decks } from './arbitrary.ts';

/** What every object answers to, and one that any may be given. */
export const INHERITED = [...Object.getOwnPropertyNames(Object.prototype), 'prototype', 'length'];
const inherited = fc.constantFrom(...INHERITED);

const plain = {
  version: 1,
  title: 'Tuesday class',
  key: 'Bb major',
  instrument: { name: 'guitar' },
  drills: [
    { kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [2, 10] },
    { kind: 'trace', sizes: ['triad'], contours: ['up'], tempo: 72 },
    { kind: 'outline', phrases: [1] },
  ],
  phrases: [{ tempo: 72, notes: ['Bb3 for 1/3', 'D4', 'F4'], outline: ['1-3 I'] }],
  marks: { 'spot 7 triad 5-4 2-8': 5 },
};

/** The document once for each text in it, and each name of a field, with another in its place. */
function* replaced(value: unknown, name: string): Generator<unknown> {
  yield name;
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    const other = (changed: [string, unknown]) =>
      Array.isArray(value)
        ? value.map((one, k) => (String(k) === key ? changed[1] : one))
        : Object.fromEntries([
            ...Object.entries(value).filter(([own]) => own !== key),
            // As JSON.parse makes it: an own property, even for `__proto__`.
            changed,
          ]);
    if (!Array.isArray(value)) yield other([name, inner]);
    for (const changed of replaced(inner, name)) yield other([key, changed]);
  }
}

describe('a name that every object has', () => {
  it('is a plain word where words are free, and a fault everywhere else', () => {
    let faults = 0;
    for (const name of INHERITED) {
      for (const document of replaced(plain, name)) {
        const read = readDeck(document);
        if ('fault' in read) faults++;
        // What is taken in can be written, and reads back.
        else expect(readDeck(writeDeck(read.deck))).toEqual(read);
      }
    }
    expect(faults).toBeGreaterThan(200);
  });

  it('is no key, no scale, no chord, no contour, no kind', () => {
    fc.assert(
      fc.property(inherited, inherited, (a, b) => {
        for (const key of [`C ${a}`, `${a} ${b}`, a]) {
          expect(readDeck({ ...plain, key })).toHaveProperty('fault');
        }
        expect(readInstrument({ name: a })).toHaveProperty('fault');
        const drill = plain.drills[0]!;
        expect(readDeck({ ...plain, drills: [{ ...drill, kind: a }] })).toHaveProperty('fault');
        expect(readDeck({ ...plain, marks: { [`${a} 7 triad 5-4`]: 1 } })).toHaveProperty('fault');
      }),
    );
  });

  it('comes through as a title, a note, an instrument of one’s own', async () => {
    await fc.assert(
      fc.asyncProperty(decks, inherited, async (deck, name) => {
        const { frets: _, ...rest } = deck.instrument;
        const named: Deck = {
          ...deck,
          title: name,
          note: name,
          instrument: { ...rest, name, frets: deck.instrument.frets },
        };
        expect(await readLink(await deckLink(named, ''))).toEqual({ deck: named });
      }),
      { numRuns: 40 },
    );
  });

  it('in a link unfolds to a fault, never to a lesson or an error', async () => {
    const seal = async (text: string) => {
      const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
      const body = new Uint8Array(await new Response(stream).arrayBuffer());
      return sealLink('lesson', '', 1, body);
    };
    const fields = ['T', '', '', 'C major', '"guitar"', 's0.54.18', '72 C4=1/3 E4 G4'];
    for (const name of INHERITED) {
      for (const [k] of fields.entries()) {
        if (k < 2) continue;
        for (const text of [name, JSON.stringify(name), `{"${name}":1}`, `C ${name}`]) {
          const letters = fields.map((field, at) => (at === k ? text : field)).join('\u001f');
          expect(await readLink(await seal(letters)), letters).toHaveProperty('fault');
        }
      }
    }
  });
});
