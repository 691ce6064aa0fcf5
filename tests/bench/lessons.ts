/**
 * What the costliest lessons that are accepted cost, in ms by the clock: to be read and offered, the longest that a page is held
 * meanwhile, and at the most for one of their cards to be drawn and explained. Each lesson is made of what the schema lets
 * through; a number other than 0 gives other phrases than the usual.
 */
import { itemsByStep, KINDS } from '../../src/cards/index.ts';
import type { Item } from '../../src/practice/item.ts';
import type { Deck } from '../../src/decks/deck.ts';
import { readDeck } from '../../src/decks/document.ts';
import { seeded } from '../../src/theory/random.ts';
import { writeNotes } from '../../src/decks/notes.ts';
import { GUITAR, openMidi } from '../../src/neck/instrument.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import { semitonesAbove } from '../../src/theory/note.ts';

const KEY = parseKey('Bb minor')!;
const PHRASED = ['outline', 'follow', 'order', 'vary', 'fill'].map((kind) => ({ kind }));
const SIZES = ['triad', 'seventh', 'ninth', 'eleventh', 'thirteenth'];

/** Of which number the phrases are. */
let others = 0;

/** `count` phrases of so many notes that leap as chance has it, on a guitar's strings where `placed`. */
function phrases(count: number, notes: number, range: readonly [number, number], placed = false) {
  const random = seeded(1 + others);
  return Array.from({ length: count }, () => {
    const line = Array.from({ length: notes }, (_, i) => {
      const midi = range[0] + random.below(range[1] - range[0] + 1);
      const note = { midi, name: spell(KEY, midi), at: beats(i, 3), length: beats(1, 3) };
      return placed ? { ...note, place: lowestPlace(midi) } : note;
    });
    return { tempo: 72, notes: writeNotes(line) };
  });
}

function lowestPlace(midi: number) {
  const string = 1 + openMidi(GUITAR).findIndex((open) => open <= midi);
  return { string, fret: midi - openMidi(GUITAR)[string - 1]! };
}

/** Phrases that leap over the whole neck, ruled to be ninths of three notes each. */
function ruled(count: number, notes: number) {
  const chords = ['i9', 'iv9', 'VImaj9', 'IIImaj9'];
  return phrases(count, notes, [40, 76], true).map((phrase) => ({
    ...phrase,
    outline: Array.from(
      { length: notes / 3 },
      (_, i) => `${3 * i + 1}-${3 * i + 3} ${chords[i % 4]}`,
    ),
  }));
}

const nine = {
  name: 'nine strings',
  tuning: ['C4', 'C4', 'C4', 'C4', 'C4', 'C4', 'C4', 'C4', 'C4'],
  frets: 27,
  scaleLength: 300,
};

const arpeggios = (kind: string, sets: string[], sizes = SIZES, frets = [0, 22]) => ({
  kind,
  sizes,
  strings: sets,
  frets,
});

/** Phrases of `notes` notes that go through chords of the key by thirds, as a teacher writes them, with their places. */
function written(count: number, notes: number) {
  const random = seeded(2 + others);
  return Array.from({ length: count }, () => {
    const midis = Array.from({ length: Math.ceil(notes / 3) }, () => {
      const chord = chordOn(KEY, 1 + random.below(7), 'triad');
      const root = 46 + semitonesAbove('Bb', chord.root);
      return chord.notes.map((name) => root + semitonesAbove(chord.root, name));
    });
    const line = midis
      .flat()
      .slice(0, notes)
      .map((midi, i) => ({
        midi,
        name: spell(KEY, midi),
        at: beats(i, 3),
        length: beats(1, 3),
        place: lowestPlace(midi),
      }));
    return { tempo: 72, notes: writeNotes(line) };
  });
}

const lessons = (): Record<string, object> => ({
  'twelve phrases of 24 notes, as a teacher may give, seven kinds': {
    drills: [...PHRASED, { kind: 'play' }, { kind: 'echo' }],
    phrases: written(12, 24),
  },
  'the same that leap as chance has it': {
    drills: [...PHRASED, { kind: 'play' }, { kind: 'echo' }],
    phrases: phrases(12, 24, [40, 76], true),
  },
  '300 notes with places, each kind twice and six tempos': {
    drills: [
      ...PHRASED,
      ...PHRASED,
      ...[60, 66, 72, 78, 84, 90].map((tempo) => ({ kind: 'play', tempo })),
    ],
    phrases: phrases(2, 150, [40, 76], true),
  },
  'a span of 200 notes that is ruled': {
    drills: PHRASED,
    phrases: phrases(1, 200, [40, 76], true).map((one) => ({ ...one, outline: ['1-200'] })),
  },
  'rhythms of 16 phrases at 20 tempos': {
    version: 3,
    drills: [
      {
        kind: 'pulse',
        figures: ['quarters', 'eighths', 'triplets', 'phrase'],
        tempos: Array.from({ length: 20 }, (_, i) => 60 + i),
        clicks: ['beat', 'bar', 'gone'],
      },
    ],
    phrases: Array.from({ length: 16 }, (_, i) => ({
      tempo: 72,
      notes: [
        'Bb3 for 1/2',
        ...Array.from({ length: 40 }, (__, k) => `D4 for ${1 + ((i + k) % 3)}/2`),
      ],
    })),
  },
  'two phrases of 75 notes without places, five kinds': {
    drills: PHRASED,
    phrases: phrases(2, 75, [50, 76]),
  },
  'twelve of 12 notes without places, seven kinds': {
    drills: [...PHRASED, { kind: 'play' }, { kind: 'echo' }],
    phrases: phrases(12, 12, [50, 76]),
  },
  'two of 33 on nine strings alike': {
    instrument: nine,
    drills: PHRASED,
    phrases: phrases(2, 33, [66, 84]),
  },
  'thirteenths on six strings, seen and placed': {
    drills: [arpeggios('place', ['6-5-4-3-2-1', '6-5-4-3-2', '5-4-3-2-1', '6-5-4-3'], SIZES)],
  },
  'three-string sets, seen and placed': {
    drills: ['spot', 'place'].map((kind) =>
      arpeggios(
        kind,
        ['6-5-4', '5-4-3', '4-3-2', '3-2-1', '6-5-3', '5-4-2', '4-3-1', '6-4-3'],
        SIZES,
      ),
    ),
  },
  'six strings, seen and played': {
    drills: [
      arpeggios('spot', ['6-5-4-3-2-1'], SIZES),
      { ...arpeggios('play', ['6-5-4-3-2-1'], SIZES), ways: ['up', 'turn'] },
      { kind: 'trace', sizes: SIZES, contours: ['up', 'down', 'turn', 'skip'], tempo: 72 },
      { kind: 'echo', sizes: SIZES, contours: ['up', 'down', 'turn', 'skip'], tempo: 72 },
    ],
  },
  'nine strings in three tunings, placed': {
    instrument: { ...nine, tuning: ['C4', 'C4', 'C4', 'F4', 'F4', 'F4', 'A#4', 'A#4', 'A#4'] },
    drills: [
      arpeggios('place', ['9-8-7-6-5-4-3-2-1'], SIZES.slice(0, 3), [0, 9]),
      arpeggios('spot', ['9-8-7-6-5-4-3-2-1'], SIZES.slice(0, 3), [0, 9]),
      arpeggios('spot', ['9-8-7-6-5-4-3'], SIZES, [0, 9]),
    ],
  },
  'two ruled phrases of 150 notes with places, followed through ninths': {
    drills: PHRASED,
    phrases: ruled(2, 150),
  },
  'thirteenths on seven strings alike': {
    instrument: nine,
    drills: [arpeggios('place', ['7-6-5-4-3-2-1'], SIZES, [0, 27])],
  },
});

/** The document of each of them by its name. */
export function documents(number: number): [string, object][] {
  others = number;
  const shared = { version: 2, title: 'Tuesday', key: 'Bb minor', phrases: [] };
  return Object.entries(lessons()).map(([name, own]) => [name, { ...shared, ...own }]);
}

/** What the costliest card of each kind costs, in ms: drawn, and explained. */
function costliest(items: readonly Item[]): Record<string, number> {
  const worst: Record<string, number> = {};
  for (const item of items) {
    const kind = KINDS[item.kind];
    for (const seed of [2, 3]) {
      const start = performance.now();
      const card = kind.ask(item, seed);
      kind.explain(card, { right: true, takenFor: null }, '', 'english');
      worst[item.kind] = Math.max(worst[item.kind] ?? 0, performance.now() - start);
    }
  }
  return worst;
}

/** The items, and the longest that goes by between two pauses of their making. */
function made(deck: Deck) {
  const work = itemsByStep(deck);
  for (let longest = 0; ;) {
    const start = performance.now();
    const step = work.next();
    longest = Math.max(longest, performance.now() - start);
    if (step.done) return { items: step.value, longest };
  }
}

/** What it costs to read and offer a lesson here, in ms, with how many items come of it; throws where it is refused. */
export function costs(document: object): Record<string, number> {
  const start = performance.now();
  const read = readDeck(structuredClone(document));
  if ('fault' in read) throw new Error(read.fault);
  const reading = performance.now() - start;
  const { items, longest } = made(read.deck);
  const [offered, held] = [performance.now() - start, Math.max(reading, longest)];
  return { items: items.length, offered, 'at a stretch': held, ...costliest(items) };
}
