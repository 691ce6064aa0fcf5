import { deflateRawSync } from 'node:zlib';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32, fromBase64url } from '../../src/decks/bytes.ts';
import { toBase64url } from '../../src/decks/seal.ts';
import { type Deck } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { deckId, readDeck } from '../../src/decks/document.ts';
import { DOCUMENT_VERSION } from '../../src/decks/version.ts';
import { openLink } from '../../src/decks/envelope.ts';
import { sealLink } from '../../src/decks/seal.ts';
import { readLink } from '../../src/decks/link.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { qrPicture } from '../../src/decks/qr.ts';
import { readRulings } from '../../src/decks/rulings.ts';
import { midiAt } from '../../src/neck/place.ts';
import type { Ruling } from '../../src/theory/analysis/ruling.ts';
import { spell } from '../../src/theory/spell.ts';
import type { Phrase, PhraseNote } from '../../src/theory/phrase.ts';
import { seeded } from '../../src/theory/random.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { decks } from './arbitrary.ts';

const BASE = 'https://music-room.example.org/evening-class/';

function deckOf(document: object): Deck {
  const read = readDeck({ version: 1, ...document });
  if ('fault' in read) throw new Error(read.fault);
  return read.deck;
}

const lesson = deckOf({
  title: 'Tuesday class: the triads of B-flat',
  note: 'Say the number aloud before you tap. Start slow, five minutes a day is plenty. See you on Tuesday, Jo',
  lessonDay: '2026-12-01',
  key: 'Bb major',
  drills: [
    { kind: 'spot', sizes: ['triad'], strings: ['5-4', '4-3'], frets: [2, 10] },
    { kind: 'place', sizes: ['triad'], strings: ['5-4', '4-3'], frets: [2, 10] },
    { kind: 'trace', sizes: ['triad'], contours: ['up', 'down', 'turn', 'skip'], tempo: 72 },
  ],
});
const link = await deckLink(lesson, BASE);
const payload = link.slice(link.indexOf('/lesson/') + 8);

/** Triplets anywhere on the lower neck, one in five joined: harder to shorten than any phrase of a lesson. */
function wander(count: number): Phrase {
  const random = seeded(1);
  const notes = Array.from({ length: count }, (_, i): PhraseNote => {
    const place = { string: 1 + random.below(5), fret: random.below(13) };
    const midi = midiAt(lesson.instrument, place);
    const note = {
      midi,
      name: spell(lesson.key, midi),
      at: beats(i, 3),
      length: beats(1, 3),
      place,
    };
    return random.below(5) === 0 ? { ...note, articulation: 'slide' } : note;
  });
  return { tempo: 72, notes };
}

const faultOf = async (text: string) => {
  const read = await readLink(text);
  return 'fault' in read ? read.fault : null;
};

const CUT = 'This lesson link was cut short';
const ALTERED = 'This lesson link was altered on the way';

/** A link with a right checksum around whatever body. */
const sealed = (body: Uint8Array, version = 1) => sealLink('lesson', BASE, version, body);
const deflated = (text: string) => deflateRawSync(text);

describe('the link of a lesson', () => {
  it('opens as the deck it was made from', async () => {
    await fc.assert(
      fc.asyncProperty(decks, async (deck) => {
        expect(await readLink(await deckLink(deck, BASE))).toEqual({ deck });
      }),
    );
  });

  it('stays under 300 characters for a plain lesson with a title and a note of 100 characters', () => {
    expect(lesson.note.length).toBeGreaterThanOrEqual(100);
    expect(BASE).toHaveLength(45);
    expect(link.length).toBeLessThan(300);
  });

  it('stays under 1,500 characters with a phrase of eight bars of triplets', async () => {
    const long = { ...lesson, phrases: [wander(96)] };
    const withPhrase = await deckLink(long, BASE);
    expect(await readLink(withPhrase)).toEqual({ deck: long });
    expect(withPhrase.length).toBeLessThan(1500);
  });

  it('carries a class’s marks on 130 items in 600 characters', async () => {
    const random = seeded(4);
    const places = ['6-5', '5-4', '4-3', '3-2', '2-1'].flatMap((strings) =>
      ['1-7', '5-12'].map((frets) => `${strings}:${frets}`),
    );
    const ids = ['spot', 'place'].flatMap((kind) =>
      places.flatMap((place) =>
        [1, 2, 3, 4, 5, 6, 7].map((degree) => `${kind}:Bb major:${degree}:triad:guitar:${place}`),
      ),
    );
    const marks = Object.fromEntries(
      random
        .shuffle(ids)
        .slice(0, 130)
        .map((id) => [id, random.pick([1, 2, 4, 5] as const)]),
    );
    const marked = { ...lesson, marks };
    const withMarks = await deckLink(marked, BASE);
    const read = await readLink(withMarks);
    expect(read).toEqual({ deck: marked });
    expect(deckId((read as { deck: Deck }).deck)).toBe(deckId(marked));
    expect(withMarks.length).toBeLessThan(600);
  });

  it('is read also where it was made before phrases had outlines', async () => {
    const old =
      'AQBoHchBCoQwDADApyQP0KRNIi6FXkR9gR9o1YsoC1YP_n5Z5zjTvZYlPTjvqRQA6DIeafueAMVRY5UpScLL0X1RKxj_WxtJ_SH3aqAV7LJGzxqUFXsLwoqjBc8eh2zRB2H7Aex0WiY';
    expect(await readLink(old)).toEqual({
      deck: deckOf({
        title: 'Tuesday class',
        key: 'Bb major',
        drills: [
          { kind: 'spot', sizes: ['triad'], strings: ['5-4', '4-3'], frets: [2, 10] },
          { kind: 'trace', sizes: ['triad'], contours: ['up', 'turn'], tempo: 72 },
        ],
        phrases: [
          {
            tempo: 72,
            notes: ['Bb3 for 1/3 on 3/3', 'D4 on 2/3', 'F4 on 1/1', 'Eb4 for 1 on 2/4'],
          },
        ],
        marks: { 'spot 7 triad 5-4 2-8': 5 },
      }),
    });
  });

  it('stays under 1,500 characters also where every arpeggio of such a phrase is ruled on and drilled', async () => {
    const outline = Array.from({ length: 32 }, (_, i) => {
      const chord = ['ii7', 'V7', 'Imaj7', 'IVmaj7', 'viiø7', 'iii7', 'vi7'][i % 7]!;
      return `${3 * i + 1}-${3 * i + 3} ${chord}`;
    });
    const rulings = readRulings(outline, 96, lesson.key) as Ruling[];
    const drills = [...lesson.drills, ...kindsOf('phrase').map((kind) => ({ kind }))];
    const ruled = { ...lesson, drills, phrases: [{ ...wander(96), rulings }] };
    const withRulings = await deckLink(ruled, BASE);
    expect(await readLink(withRulings)).toEqual({ deck: ruled });
    expect(withRulings.length).toBeLessThan(1500);
  });

  it('is read from an address, from what follows #, and from the payload alone', async () => {
    const spaced = link.replace(/(.{70})/g, '$1\r\n  ');
    const forms = [link, `#/lesson/${payload}`, `/lesson/${payload}`, payload];
    const around = [` ${link}\n`, `<${link}>`, `(${payload}).`, `Here it is: ${link}`, spaced];
    for (const text of [...forms, ...around, `${link}\n\nSee you on Tuesday!`]) {
      expect(await readLink(text)).toEqual({ deck: lesson });
    }
  });

  it('is told to be cut short at every length', async () => {
    for (let length = 0; length < payload.length; length++) {
      expect(await faultOf(`${BASE}#/lesson/${payload.slice(0, length)}`)).toContain(CUT);
    }
  });

  it('is refused with any byte altered in any way', async () => {
    const bytes = fromBase64url(payload)!;
    await fc.assert(
      fc.asyncProperty(
        fc.nat({ max: bytes.length - 1 }),
        fc.integer({ min: 1, max: 255 }),
        async (at, change) => {
          const other = bytes.slice();
          other[at]! ^= change;
          const fault = await faultOf(`#/lesson/${toBase64url(other)}`);
          expect(fault).toContain(at === 1 || at === 2 ? 'This lesson link was' : ALTERED);
        },
      ),
    );
  });

  it('is refused with any letter altered, the last one too', async () => {
    for (let i = 4; i < payload.length; i++) {
      const other = payload[i] === 'x' ? 'y' : 'x';
      const altered = payload.slice(0, i) + other + payload.slice(i + 1);
      expect(await faultOf(`#/lesson/${altered}`)).toContain(ALTERED);
    }
  });

  it('is told from what is no lesson link', async () => {
    expect(await faultOf('')).toContain('This is not a lesson link');
    expect(await faultOf('Hello, can we move Tuesday to Thursday?')).toContain('not a lesson link');
    expect(await faultOf('https://harbour.example.org/timetable')).toContain('not a lesson link');
    expect(await faultOf(`${BASE}#/report/${payload}`)).toBe(
      'This is a report, not a lesson. Open it under Teach.',
    );
  });

  it('is told to be too large before anything is unpacked', async () => {
    expect(await faultOf(`${BASE}#/lesson/${'A'.repeat(1_000_000)}`)).toContain('too large');
  });

  it('is not unpacked without end', async () => {
    const bomb = deflateRawSync(Buffer.alloc(40_000_000));
    expect(bomb.length).toBeLessThan(65_000);
    expect(await faultOf(sealed(bomb))).toContain('unpacks to more than any lesson holds');
  });

  it('is of the second version, which older programs say they need, only with cards for the guitar', async () => {
    const versionOf = async (drill: object) => {
      const read = readDeck({ version: 1, title: 'Quay', key: 'Bb major', drills: [drill] });
      if ('fault' in read) throw new Error(read.fault);
      const made = await deckLink(read.deck, BASE);
      const opened = openLink('lesson', 1, made);
      return 'fault' in opened ? opened.fault : opened.version;
    };
    const lying = { sizes: ['triad'], strings: ['5-4'], frets: [1, 5] };
    expect(await versionOf({ kind: 'spot', ...lying })).toBe(1);
    expect(await versionOf({ kind: 'play', ...lying, ways: ['up'] })).toMatch(
      /^This lesson was made with a newer version of Skipwise\./,
    );
  });

  it('is of the third only with the rhythm of a phrase to be kept even', async () => {
    const versionOf = async (figure: string) => {
      const drill = { kind: 'pulse', figures: [figure], tempos: [60], clicks: ['beat'] };
      const phrases = [{ tempo: 72, notes: ['Bb3 for 1/3', 'D4', 'F4', 'A4 for 1'] }];
      const quay = { version: 1, title: 'Quay', key: 'Bb major', drills: [drill], phrases };
      const read = readDeck(quay);
      if ('fault' in read) throw new Error(read.fault);
      const made = await deckLink(read.deck, BASE);
      expect(await readLink(made)).toEqual({ deck: read.deck });
      const opened = openLink('lesson', 2, made);
      return 'fault' in opened ? opened.fault : opened.version;
    };
    expect(await versionOf('triplets')).toBe(2);
    expect(await versionOf('phrase')).toMatch(
      /^This lesson was made with a newer version of Skipwise\./,
    );
  });

  it('is told to be of a newer version', async () => {
    expect(await faultOf(sealed(deflated('?'), DOCUMENT_VERSION + 1))).toContain(
      'newer version of Skipwise',
    );
  });

  it.each([...Array(15).keys()].map((k) => k + 1))(
    'is known by its letters alone, of version %i too',
    async (version) => {
      const [, letters] = sealed(deflated('?'), version).split('/lesson/');
      const fault = await faultOf(letters!);
      expect(fault!.includes('newer version of Skipwise')).toBe(version > DOCUMENT_VERSION);
      expect(fault).not.toContain('This is not a lesson link');
    },
  );

  it('is refused when whole but made by someone else', async () => {
    expect(await faultOf(sealed(new Uint8Array()))).toContain(ALTERED);
    expect(await faultOf(sealed(deflated('?'), 0))).toContain(ALTERED);
    expect(await faultOf(sealed(Uint8Array.of(7, 7, 7)))).toContain(ALTERED);
    expect(await faultOf(sealed(deflateRawSync(Uint8Array.of(0xff, 0xfe))))).toContain(ALTERED);
    expect(await faultOf(sealed(deflated('A title')))).toContain(
      'holds something that no lesson has. Key:',
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fc.string(), { maxLength: 9 }), async (fields) => {
        expect(await faultOf(sealed(deflated(fields.join('\u001f'))))).toMatch(/\.$/);
      }),
    );
  });

  it('carries script in a title through as text', async () => {
    const title = `<img src=x onerror="alert(1)"><script>alert('2')</script>`;
    const deck = { ...lesson, title };
    expect(await readLink(await deckLink(deck, BASE))).toEqual({ deck });
  });

  it('is not made of what no student could open', async () => {
    await expect(deckLink({ ...lesson, title: 'x'.repeat(81) }, BASE)).rejects.toThrow(
      'Title: shorten it to 80 characters.',
    );
  });
});

describe('bytes in an address', () => {
  it('read back to themselves and are base64url as Node writes it', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        const text = toBase64url(bytes);
        expect(text).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64url(text)).toEqual(bytes);
      }),
    );
  });

  it('are summed as the check value of CRC-32 says', () => {
    // The check value of CRC-32/ISO-HDLC over "123456789" (G. Cook, Catalogue of parametrised CRC algorithms).
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });
});

describe('the QR code of a link', () => {
  it('is a square of dark squares with a quiet margin', async () => {
    const { path, size } = await qrPicture(link);
    // A finder pattern begins where the margin of 4 ends.
    expect(path.startsWith('M4 4h1v1h-1zM5 4h1v1h-1z')).toBe(true);
    expect((size - 8 - 17) % 4).toBe(0);
  });

  it('is refused for what no QR code holds', async () => {
    await expect(qrPicture('x'.repeat(2954))).rejects.toThrow('too long for a QR code');
  });
});
