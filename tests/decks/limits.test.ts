/** Every limit of what comes in, at the last that passes and the first that does not. */
import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { MOST } from '../../src/decks/deck.ts';
import { bounds } from '../../src/decks/drills/drillForm.ts';
import { readDeck } from '../../src/decks/document.ts';
import { openLink } from '../../src/decks/envelope.ts';
import { sealLink } from '../../src/decks/seal.ts';
import { readLink } from '../../src/decks/link.ts';
import { readMidi } from '../../src/decks/notation/midi.ts';
import { midiFault } from '../../src/decks/notation/midiBounds.ts';
import { readTablature } from '../../src/decks/notation/tablature-reader.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { beats } from '../../src/theory/rhythm.ts';

const key = { tonic: 'Bb', scale: 'major' } as const;

const word = (value: number, bytes: number) =>
  Array.from({ length: bytes }, (_, k) => Math.floor(value / 256 ** (bytes - 1 - k)) % 256);
const chunk = (name: string, body: readonly number[]) => [
  ...Array.from(name, (letter) => letter.charCodeAt(0)),
  ...word(body.length, 4),
  ...body,
];
/** A Standard MIDI File of 480 ticks a beat with these tracks. */
const file = (...tracks: readonly (readonly number[])[]) =>
  Uint8Array.from([
    ...chunk('MThd', [...word(1, 2), ...word(tracks.length, 2), ...word(480, 2)]),
    ...tracks.flatMap((one) => chunk('MTrk', one)),
  ]);
const END = [0, 0xff, 0x2f, 0];
const notes = (count: number) =>
  Array.from({ length: count }, (_, k) => [
    0,
    0x90,
    60 + (k % 12),
    80,
    100,
    0x80,
    60 + (k % 12),
    0,
  ]).flat();
const controllers = (count: number) => Array.from({ length: count }, () => [1, 0xb0, 7, 1]).flat();
const TOO_MUCH =
  'This MIDI file holds far more than a phrase (up to 1000 notes a track, 10000 events and 100 tracks are read): cut the phrase out first.';

describe('a MIDI file', () => {
  it.each([
    ['1,000 notes in a track', file([...notes(1000), ...END]), null],
    ['1,001 notes in a track', file([...notes(1001), ...END]), TOO_MUCH],
    [
      '1,000 notes in each of four tracks',
      file(...Array.from({ length: 4 }, () => [...notes(1000), ...END])),
      null,
    ],
    ['9,999 events', file([...controllers(9998), ...END]), null],
    ['10,000 events', file([...controllers(9999), ...END]), TOO_MUCH],
    [
      '9,999 events in two tracks',
      file([...controllers(4998), ...END], [...controllers(4999), ...END]),
      null,
    ],
    [
      '10,000 events in two tracks',
      file([...controllers(4999), ...END], [...controllers(4999), ...END]),
      TOO_MUCH,
    ],
    ['100 tracks', file(...Array.from({ length: 100 }, () => END)), null],
    ['101 tracks', file(...Array.from({ length: 101 }, () => END)), TOO_MUCH],
  ])('of %s', (_, bytes, fault) => expect(midiFault(bytes)).toBe(fault));

  it('of a million bytes is looked at, of one more it is not', () => {
    const start = file([...notes(3), ...END]);
    const padded = (bytes: number) => {
      const whole = new Uint8Array(bytes);
      whole.set(start);
      // A chunk of another name is passed over.
      whole.set(chunk('XXXX', []).slice(0, 4), start.length);
      new DataView(whole.buffer).setUint32(start.length + 4, bytes - start.length - 8);
      return whole;
    };
    expect(readMidi(padded(1_000_000), { key })).toHaveProperty('phrase');
    expect(readMidi(padded(1_000_001), { key })).toEqual({
      fault: 'This file is larger than a MIDI file of one phrase: cut the phrase out first.',
    });
  });

  it('of 200 notes is a phrase, of 201 it is not', () => {
    expect(readMidi(file([...notes(200), ...END]), { key })).toHaveProperty('phrase');
    expect(readMidi(file([...notes(201), ...END]), { key })).toEqual({
      fault: 'This part has 201 notes, and a phrase at most 200: cut the phrase out first.',
    });
  });
});

describe('tablature', () => {
  const read = (text: string) =>
    readTablature(text, {
      instrument: GUITAR,
      key,
      length: beats(1, 3),
      tempo: 72,
      beatsPerBar: 4,
    });
  const system = (frets: number) =>
    [
      `e|${'-1-'.repeat(frets)}|`,
      ...[...'BGDAE'].map((name) => `${name}|${'---'.repeat(frets)}|`),
    ].join('\n');

  it('of 20,000 characters is read, of one more it is not', () => {
    const text = `${system(3)}\n`;
    expect(read(text.padEnd(20_000, '\n'))).toHaveProperty('phrase');
    expect(read(text.padEnd(20_001, '\n'))).toMatchObject({
      faults: [{ sentence: 'This is longer than a phrase can be: paste up to 20000 characters.' }],
    });
  });

  it('of 200 notes is a phrase, of 201 it is to be cut', () => {
    const systems = (count: number) =>
      [...Array.from({ length: Math.floor(count / 20) }, () => 20), count % 20]
        .filter((frets) => frets > 0)
        .map(system)
        .join('\n\n');
    expect(read(systems(200))).toHaveProperty('phrase');
    expect(read(systems(201))).toMatchObject({
      faults: [{ sentence: 'A phrase has at most 200 notes: cut it here.' }],
    });
  });
});

describe('a link', () => {
  it('is read in up to 200,000 characters', () => {
    const link = sealLink('lesson', '', 1, new Uint8Array(8));
    const around = (length: number) => openLink('lesson', 1, link.padStart(length, ' '));
    expect(around(200_000)).toHaveProperty('body');
    expect(around(200_001)).toEqual({
      fault: 'This is too large to be a lesson link. Copy the link alone and paste it again.',
    });
  });

  it('holds up to 65,535 bytes', () => {
    expect(sealLink('lesson', '', 1, new Uint8Array(0xffff - 7))).toMatch(/^#\/lesson\//);
    expect(() => sealLink('lesson', '', 1, new Uint8Array(0xffff - 6))).toThrow('too large');
  });

  it('unpacks to no more than 200,000 bytes', async () => {
    const bomb = async (bytes: number) => {
      const link = sealLink('lesson', '', 1, deflateRawSync(Buffer.alloc(bytes, 32)));
      const read = await readLink(link);
      return 'fault' in read ? read.fault : '';
    };
    expect(await bomb(200_001)).toContain('unpacks to more than any lesson holds');
    expect(await bomb(200_000)).not.toContain('unpacks to more');
  });
});

describe('a lesson', () => {
  const plain = {
    version: 1,
    title: 'Tuesday',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }] as unknown[],
  };
  const faultOf = (change: object) => {
    const read = readDeck({ ...plain, ...change });
    return 'fault' in read ? read.fault : null;
  };
  const times = <T>(count: number, make: (i: number) => T) =>
    Array.from({ length: count }, (_, i) => make(i));
  const phrase = (count: number, note = 'Bb3 on 3/3') => ({
    tempo: 72,
    notes: times(count, () => note),
  });
  const outline = [{ kind: 'outline' }];
  const SIZES = ['triad', 'seventh', 'ninth', 'eleventh', 'thirteenth'];
  const SETS = '6-5 6-4 6-3 6-2 6-1 5-4 5-3 5-2 5-1 4-3 4-2 4-1 3-2 3-1 2-1 6-5-4 5-4-3'.split(' ');
  const marks = (count: number) =>
    Object.fromEntries(
      times(count, (i) => [
        `spot ${(i % 7) + 1} triad 5-4 ${Math.floor(i / 140)}-${8 + (Math.floor(i / 7) % 20)}`,
        3,
      ]),
    );
  const arpeggios = (count: number) => [
    { kind: 'spot', sizes: SIZES, strings: SETS, frets: [0, 12] },
    {
      kind: 'spot',
      degrees: times(count - 595, (i) => i + 1),
      sizes: ['triad'],
      strings: ['5-4'],
      frets: [0, 12],
    },
  ];

  it.each([
    ['a title of 80 letters', { title: 'x'.repeat(80) }, null],
    ['a title of 81 letters', { title: 'x'.repeat(81) }, /80/],
    ['a note of 500 letters', { note: 'x'.repeat(500) }, null],
    ['a note of 501 letters', { note: 'x'.repeat(501) }, /500/],
    ['20 drills', { drills: times(20, () => plain.drills[0]) }, null],
    ['21 drills', { drills: times(21, () => plain.drills[0]) }, /20 drills/],
    ['16 phrases', { phrases: times(16, () => phrase(1)) }, null],
    ['17 phrases', { phrases: times(17, () => phrase(1)) }, /16 phrases/],
    ['a phrase of 200 notes', { phrases: [phrase(200)] }, null],
    ['a phrase of 201 notes', { phrases: [phrase(201)] }, /200 notes/],
    ['1,000 marks', { marks: marks(1000) }, null],
    ['1,001 marks', { marks: marks(1001) }, /keep it to 1000 marks/],
    ['600 arpeggios', { drills: arpeggios(600) }, null],
    ['601 arpeggios', { drills: arpeggios(601) }, /601 arpeggios/],
    ['300 notes drilled', { phrases: [phrase(200), phrase(100)], drills: outline }, null],
    [
      '301 notes drilled',
      { phrases: [phrase(200), phrase(100), phrase(1)], drills: outline },
      /301 notes/,
    ],
    ['150 notes without places drilled', { phrases: [phrase(150, 'Bb3')], drills: outline }, null],
    [
      '151 notes without places drilled',
      { phrases: [phrase(150, 'Bb3'), phrase(1, 'Bb3')], drills: outline },
      /302 notes, where those of phrases without all places count twice/,
    ],
    [
      '800 rulings',
      {
        phrases: times(4, () => ({
          ...phrase(200),
          outline: times(200, (i) => `${i + 1} chordal`),
        })),
      },
      null,
    ],
  ])('with %s', (_, change, fault) => {
    if (fault === null) expect(faultOf(change)).toBeNull();
    else expect(faultOf(change)).toMatch(fault);
  });

  it('holds as much as is said', () =>
    expect(MOST).toEqual({
      title: 80,
      note: 500,
      drills: 20,
      stringSets: 20,
      phrases: 16,
      notes: 200,
      tempos: 20,
      key: 40,
      marks: 1000,
      arpeggios: 600,
      pulses: 1200,
      drilledNotes: 300,
      ways: 5400,
      spread: 50,
      rulings: 800,
    }));
});

it('a lesson in the making may hold nothing yet, and more than one that is sent: up to a hundred of each', () => {
  expect(bounds('whole', 7)).toEqual({ least: 1, most: 7 });
  expect(bounds('unfinished', 7)).toEqual({ least: 0, most: 100 });
  expect(bounds('unfinished', 120)).toEqual({ least: 0, most: 120 });
});

it.each([
  [29, false],
  [30, true],
  [240, true],
  [241, false],
])('a card that is played or tapped at %i beats a minute is taken: %s', (tempo, taken) => {
  for (const drill of [
    { kind: 'play', sizes: ['triad'], strings: ['5-4'], frets: [1, 8], ways: ['up'], tempo },
    { kind: 'pulse', figures: ['triplets'], tempos: [tempo], clicks: ['beat'] },
    { kind: 'trace', sizes: ['triad'], contours: ['up'], tempo },
  ])
    expect(
      'deck' in readDeck({ version: 3, title: 'Tuesday', key: 'Bb major', drills: [drill] }),
      drill.kind,
    ).toBe(taken);
});
