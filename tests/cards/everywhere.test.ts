import { describe, expect, it } from 'vitest';
import { itemsOf, KINDS } from '../../src/cards/index.ts';
import { phraseOfSteps, type TraceCard } from '../../src/cards/trace/ask.ts';
import { CONTOURS, WAYS, KIND_NAMES, type Deck, type KindName } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { fretsLeft, INSTRUMENTS, openMidi, type Instrument } from '../../src/neck/instrument.ts';
import type { Item } from '../../src/practice/item.ts';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import type { Key } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import { seeded, type Random } from '../../src/theory/random.ts';
import { beats } from '../../src/theory/rhythm.ts';

const TONICS = {
  major: 'C G D A E B F# C# F Bb Eb Ab Db Gb Cb',
  minor: 'A E B F# C# G# D# A# D G C F Bb Eb Ab',
} as const;
const KEYS = (['major', 'minor'] as const).flatMap((scale) =>
  TONICS[scale].split(' ').map((tonic): Key => ({ tonic, scale })),
);
const ON_B = KEYS.filter(({ tonic }) => tonic === 'B' || tonic === 'Cb');
const CAPOS = [0, 1, 2, 3, 4, 5, 6, 7];

/** ii V I in triplets, each rising from the lowest note of its chord that the instrument has. */
function cadence(key: Key, instrument: Instrument) {
  const lowest = Math.min(...openMidi(instrument));
  const notes = [2, 5, 1].flatMap((degree) => {
    let from = lowest;
    return chordOn(key, degree, 'triad').notes.map((name) => {
      const midi = from + ((chroma(name) - (from % 12) + 12) % 12);
      from = midi + 1;
      return { midi, name };
    });
  });
  return {
    tempo: 80,
    notes: notes.map((note, i) => ({ ...note, at: beats(i, 3), length: beats(1, 3) })),
  };
}

function deckOf(key: Key, instrument: Instrument, sizes: Deck['drills']): Deck {
  return {
    title: 'Everywhere',
    note: '',
    lessonDay: null,
    instrument,
    key,
    drills: [...sizes, ...kindsOf('phrase').map((kind) => ({ kind }))],
    phrases: [cadence(key, instrument)],
  };
}

/** Draws a card and explains a right and a wrong answer, as a round would: whatever throws, throws here. */
function draw(item: Item, seed: number) {
  const kind = KINDS[item.kind];
  const card = kind.ask(item, seed);
  for (const answer of ['1', ...(item.kind === 'trace' ? [(card as TraceCard).path] : [])]) {
    const { sound } = kind.explain(card, kind.judge(card, answer), answer, 'english');
    expect(sound.notes.length, item.id).toBeGreaterThan(1);
  }
  if (item.kind === 'trace') expectSounded(card as TraceCard);
}

/** Four different paths, each of notes that the instrument has. */
function expectSounded({ item, instrument, seed, choices }: TraceCard) {
  expect(new Set(choices.map(({ path }) => path)).size, item.id).toBe(4);
  const midi = choices.flatMap(({ heights }) =>
    phraseOfSteps(heights, { ...item, instrument }).notes.map((note) => note.midi),
  );
  const missing = midi.filter((pitch) => !isSounded(instrument, pitch));
  expect(missing, `${item.id}, seed ${seed}`).toEqual([]);
}

const isSounded = (instrument: Instrument, midi: number) =>
  openMidi(instrument).some((open) => midi >= open && midi - open <= fretsLeft(instrument));

/** All of it takes many minutes: `npm run soak` draws it, and every other run a share that has each key, capo and instrument. */
const ALL = process.env.SOAK !== undefined;

/** With which capos a key is drawn: by turns over keys and instruments, B and C♭, where lines lie lowest, with more. */
function caposOf(key: number, instrument: number): readonly number[] {
  if (ALL) return CAPOS;
  const one = (key + instrument) % CAPOS.length;
  return ON_B.includes(KEYS[key]!)
    ? [one, (one + 3) % CAPOS.length, (one + 5) % CAPOS.length]
    : [one];
}

const STRINGS = [
  [2, 1],
  [4, 3, 2],
];

/** Draws some cards of every kind; gives the kinds that there were items of. */
function drawIn(key: Key, instrument: Instrument, random: Random): Set<KindName> {
  const strings = STRINGS;
  const frets = [1, Math.min(12, fretsLeft(instrument))] as const;
  const degrees = [random.pick([1, 2, 3]), random.pick([4, 5, 6, 7])];
  const sizes = [random.pick(SIZES)];
  const items = itemsOf(
    deckOf(key, instrument, [
      ...kindsOf('neck').map((kind) => {
        const size = kind === 'place' ? 'seventh' : 'triad';
        return { kind, degrees, sizes: [size], strings, frets } as const;
      }),
      { kind: 'trace', degrees, sizes, contours: CONTOURS, tempo: 72 },
      { kind: 'play', degrees, sizes: ['triad'], strings, frets, ways: WAYS, tempo: 72 },
      { kind: 'play' },
      { kind: 'echo', degrees, sizes, contours: CONTOURS, tempo: 72, rhythm: 'eighths' },
      { kind: 'echo' },
      { kind: 'pulse', figures: ['eighths'], tempos: [72], clicks: ['bar'] },
    ]),
  );
  const drawn = new Set<KindName>();
  for (const kind of KIND_NAMES) {
    const some = random.shuffle(items.filter((item) => item.kind === kind));
    for (const item of some.slice(0, kind === 'trace' ? 2 : 1)) {
      draw(item, random.below(2 ** 31));
      drawn.add(kind);
    }
  }
  return drawn;
}

describe.each(INSTRUMENTS.map((listed, number) => ({ ...listed, listed, number })))(
  'on $name, in 30 keys, with capos 0 to 7',
  ({ listed, number }) => {
    it('every kind of card can be drawn and explained, and what is offered can be sounded', () => {
      const random = seeded(number + 1);
      const drawn = new Set<KindName>();
      for (const [k, key] of KEYS.entries()) {
        for (const capo of caposOf(k, number)) {
          for (const kind of drawIn(key, { ...listed, capo }, random)) drawn.add(kind);
        }
      }
      expect([...drawn].toSorted()).toEqual(KIND_NAMES.toSorted());
    });
  },
);
