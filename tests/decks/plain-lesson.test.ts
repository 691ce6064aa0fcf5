/** A plain lesson's link is read without the schema: what comes of it is what the schema would read, or nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deckLink } from '../../src/decks/deckLink.ts';
import { deckId, readDeck, writeDeck } from '../../src/decks/document.ts';
import { lettersOf } from '../../src/decks/letters.ts';
import { readLetters } from '../../src/decks/link.ts';
import { plainLesson } from '../../src/decks/plainLesson.ts';
import { INSTRUMENTS } from '../../src/neck/instrument.ts';
import { decks } from './arbitrary.ts';

const BASE = 'https://skipwise.example/';
const FIELD = '\u001f';

async function letters(link: string): Promise<string> {
  const read = await lettersOf(link);
  if (typeof read !== 'string') throw new Error(read.fault);
  return read;
}

/** What the schema makes of the same letters. */
function bySchema(text: string) {
  const read = readLetters(text);
  if ('fault' in read) return null;
  return { id: deckId(read.deck), deck: read.deck, document: writeDeck(read.deck) };
}

const PLAIN = {
  title: 'Tuesday',
  note: 'Slowly.\nThen in time.',
  day: '20261208',
  key: 'Bb major',
  instrument: '',
  drills: 's01.54,43.18 p0.32,21.2ar.125 t0.ut.72e',
};

const lettersWith = (change: Partial<typeof PLAIN>) =>
  Object.values({ ...PLAIN, ...change }).join(FIELD);

describe('a plain lesson', () => {
  it('is read as the schema reads it', () => {
    const read = plainLesson(lettersWith({}));
    expect(read).not.toBeNull();
    expect(read).toEqual(bySchema(lettersWith({})));
  });

  it.each(INSTRUMENTS.map(({ name }) => name))('may be played on the %s of the list', (name) => {
    const drills = 's0.21.17 t01.udts.90';
    const text = lettersWith({ drills, instrument: name === 'guitar' ? '' : JSON.stringify(name) });
    const read = plainLesson(text);
    expect(read!.deck.instrument.name).toBe(name);
    expect(read).toEqual(bySchema(text));
  });

  it('may have neither day, note nor drills', () => {
    for (const text of [`A${FIELD}${FIELD}${FIELD}G minor`, lettersWith({ day: '', drills: '' })]) {
      expect(plainLesson(text)).not.toBeNull();
      expect(plainLesson(text)).toEqual(bySchema(text));
    }
  });
});

describe('what is no plain lesson, or not right, is left to the schema', () => {
  it.each([
    ['a phrase', `${lettersWith({})}${FIELD}80 Bb3`],
    ['a mark', lettersWith({ drills: 's0.54.18 =s0.5-4.1-8.4000005' })],
    ['a drill of another form', lettersWith({ drills: 'u0.60.0' })],
    ['a pentatonic key', lettersWith({ key: 'G minor pentatonic' })],
    ['an instrument of its own', lettersWith({ instrument: '{"name":"guitar","capo":2}' })],
    ['a day that no calendar has', lettersWith({ day: '20260230' })],
    ['no key', lettersWith({ key: 'H major' })],
    ['too long a title', lettersWith({ title: 'a'.repeat(81) })],
    ['letters that turn the line', lettersWith({ title: 'a\u202eb' })],
    ['too long a note', lettersWith({ note: 'a'.repeat(501) })],
    ['no size', lettersWith({ drills: 's.54.18' })],
    ['an unknown size', lettersWith({ drills: 's9.54.18' })],
    ['a size twice', lettersWith({ drills: 's00.54.18' })],
    ['an eighth degree', lettersWith({ drills: 's0.54.18.8' })],
    ['a degree twice', lettersWith({ drills: 's0.54.18.11' })],
    ['strings from below', lettersWith({ drills: 's0.45.18' })],
    ['a string set twice', lettersWith({ drills: 's0.54,54.18' })],
    ['a string too many', lettersWith({ drills: 's0.76.18' })],
    ['frets from above', lettersWith({ drills: 's0.54.81' })],
    ['a fret beyond the last', lettersWith({ drills: 's0.54.1n' })],
    ['one fret', lettersWith({ drills: 's0.54.1' })],
    ['unknown shapes', lettersWith({ drills: 's0.54.18x' })],
    ['an unknown contour', lettersWith({ drills: 't0.x.72' })],
    ['a contour twice', lettersWith({ drills: 't0.uu.72' })],
    ['too slow a tempo', lettersWith({ drills: 't0.u.29' })],
    ['no whole tempo', lettersWith({ drills: 't0.u.72x' })],
    ['too many drills', lettersWith({ drills: Array(21).fill('s0.54.18').join(' ') })],
    [
      'too many arpeggios',
      lettersWith({ drills: Array(20).fill('s0123.54,43,32,21.18').join(' ') }),
    ],
  ])('%s', (_what, text) => {
    expect(plainLesson(text)).toBeNull();
  });
});

it('any deck is read by it as by the schema, or not at all', async () => {
  await fc.assert(
    fc.asyncProperty(decks, async (deck) => {
      const plain = plainLesson(await letters(await deckLink(deck, BASE)));
      if (plain) expect(plain).toEqual({ id: deckId(deck), deck, document: writeDeck(deck) });
    }),
  );
});

it('whatever the letters, it reads nothing that the schema would not read so', () => {
  const some = fc.array(fc.constantFrom(...'0123456789abcdefnrtuspz.,- =e"', FIELD), {
    maxLength: 3,
  });
  const changes = fc.array(fc.tuple(fc.nat(80), fc.nat(2), some), { minLength: 1, maxLength: 3 });
  let read = 0;
  fc.assert(
    fc.property(changes, (all) => {
      let text = lettersWith({});
      for (const [at, gone, put] of all)
        text = text.slice(0, at) + put.join('') + text.slice(at + gone);
      const plain = plainLesson(text);
      if (!plain) return;
      read++;
      expect(plain).toEqual(bySchema(text));
    }),
    { numRuns: 2000 },
  );
  expect(read).toBeGreaterThan(100);
});

it('refuses nothing that the schema reads of such lessons', () => {
  const read = readDeck({ version: 1, ...DOCUMENT });
  if ('fault' in read) throw new Error(read.fault);
  const text = 'Tuesday\u001f\u001f\u001fBb major\u001f\u001fs0.54,43.18 p0.54,43.18 t0.ut.72';
  expect(plainLesson(text)!.deck).toEqual(read.deck);
});

const NECK = { sizes: ['triad'], strings: ['5-4', '4-3'], frets: [1, 8] };
const DOCUMENT = {
  title: 'Tuesday',
  key: 'Bb major',
  drills: [
    { kind: 'spot', ...NECK },
    { kind: 'place', ...NECK },
    { kind: 'trace', sizes: ['triad'], contours: ['up', 'turn'], tempo: 72 },
  ],
};
