import { costFault } from '../../src/decks/cost.ts';
import * as fc from 'fast-check';
import {
  CONTOURS,
  WAYS,
  type Deck,
  type Drill,
  type Mark,
  type Marks,
  type OfPhrases,
  type TaughtPhrase,
} from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import {
  fretsLeft,
  instrumentId,
  INSTRUMENTS,
  type Instrument,
} from '../../src/neck/instrument.ts';
import { PLAIN_TEXT } from '../../src/decks/plain.ts';
import { type HandChoice } from '../../src/neck/choice.ts';
import { SHAPE_CHOICES } from '../../src/neck/shapeChoice.ts';
import { midiAt } from '../../src/neck/place.ts';
import { candidates } from '../../src/theory/analysis/candidates.ts';
import type { Ruling } from '../../src/theory/analysis/ruling.ts';
import { SIZES } from '../../src/theory/chord.ts';
import type { Key } from '../../src/theory/key.ts';
import { keyName } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import type { Phrase } from '../../src/theory/phrase.ts';
import { add, beats, type Beats } from '../../src/theory/rhythm.ts';
import { hasSevenNotes, parentKey, SCALE_KINDS } from '../../src/theory/scale.ts';

/** Text of any script that fits on one line, without what a lesson may not hold. */
const line = (most: number) =>
  fc
    .string({ unit: 'grapheme', maxLength: most })
    .map((text) => text.slice(0, most))
    .filter((text) => PLAIN_TEXT.test(text));

const someOf = <T>(of: readonly T[]) =>
  fc.shuffledSubarray([...of], { minLength: 1 }) as fc.Arbitrary<readonly T[]>;

export const keys: fc.Arbitrary<Key> = fc.record({
  tonic: fc.constantFrom('C', 'Bb', 'Eb', 'F', 'F#', 'Cb', 'C#', 'G#', 'Abb', 'D##'),
  scale: fc.constantFrom(...SCALE_KINDS),
});

export const instruments: fc.Arbitrary<Instrument> = fc
  .tuple(
    fc.constantFrom(...INSTRUMENTS),
    fc.integer({ min: 0, max: 5 }),
    fc.boolean(),
    fc.boolean(),
    line(40),
  )
  .map(([listed, capo, leftHanded, own, name]) => ({
    ...listed,
    capo,
    leftHanded,
    ...(own ? { name, frets: 19, scaleLength: 612.5 } : {}),
  }));

function drills(instrument: Instrument): fc.Arbitrary<Drill> {
  const shared = { degrees: someOf([1, 2, 3, 4, 5, 6, 7]), sizes: someOf(SIZES) };
  const all = Array.from(instrument.tuning, (_, i) => instrument.tuning.length - i);
  const stringSet = fc.subarray(all, { minLength: 1 });
  const neck = fc.record(
    {
      kind: fc.constantFrom('spot', 'place'),
      ...shared,
      strings: fc.uniqueArray(stringSet, { minLength: 1, maxLength: 6, selector: String }),
      frets: fc
        .tuple(fc.nat({ max: fretsLeft(instrument) }), fc.nat({ max: fretsLeft(instrument) }))
        .map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]),
      shapes: fc.constantFrom(...SHAPE_CHOICES),
    },
    { requiredKeys: ['kind', 'degrees', 'sizes', 'strings', 'frets'] },
  ) as fc.Arbitrary<Drill>;
  const ear = fc.record(
    {
      kind: fc.constant('trace' as const),
      ...shared,
      contours: someOf(CONTOURS),
      tempo: fc.integer({ min: 30, max: 240 }),
      rhythm: fc.constant('eighths' as const),
    },
    { requiredKeys: ['kind', 'degrees', 'sizes', 'contours', 'tempo'] },
  );
  const leisure = fc.option(fc.integer({ min: 30, max: 240 }));
  const play = fc.tuple(neck, someOf(WAYS), leisure).map(([drill, ways, tempo]) => ({
    ...drill,
    kind: 'play',
    ways,
    ...(tempo === null ? {} : { tempo }),
  })) as fc.Arbitrary<Drill>;
  const echo = ear.map((drill) => ({ ...drill, kind: 'echo' as const }));
  return fc.oneof(neck, ear, play, echo);
}

const lengths: fc.Arbitrary<Beats> = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.constantFrom(1, 2, 3, 4, 6, 8, 12, 16))
  .map(([n, d]) => beats(n, d));

/** Phrases that lie on the neck, with rests, ringing notes, articulations and unknown places. */
export function phrases(instrument: Instrument, key: Key, allPlaced = false): fc.Arbitrary<Phrase> {
  const note = fc.record({
    string: fc.integer({ min: 1, max: instrument.tuning.length }),
    fret: fc.nat({ max: Math.min(15, fretsLeft(instrument)) }),
    placed: allPlaced ? fc.constant(true) : fc.boolean(),
    gap: fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, lengths),
    length: fc.oneof({ weight: 3, arbitrary: fc.constant(beats(1, 3)) }, lengths),
    articulation: fc.constantFrom(undefined, undefined, 'slide', 'hammer-on', 'pull-off'),
  });
  return fc
    .tuple(
      fc.array(note, { minLength: 1, maxLength: 24 }),
      fc.integer({ min: 30, max: 240 }),
      lengths,
    )
    .map(([drawn, tempo, start]) => {
      let at = start;
      const notes = drawn.map(({ string, fret, placed, gap, length, articulation }) => {
        const midi = midiAt(instrument, { string, fret });
        const played = {
          midi,
          name: spell(key, midi),
          at,
          length,
          ...(placed ? { place: { string, fret } } : {}),
          ...(articulation ? { articulation } : {}),
        } as const;
        at = add(at, gap ?? length);
        return played;
      });
      return { tempo, notes };
    });
}

/** A phrase with rulings on groups that do not overlap, or on notes between them. */
function taught(instrument: Instrument, key: Key): fc.Arbitrary<TaughtPhrase> {
  const chord = fc.option(fc.constantFrom(...candidates(key)));
  const ruled = fc.array(
    fc.tuple(fc.nat({ max: 3 }), fc.integer({ min: 1, max: 4 }), chord, fc.boolean()),
    { maxLength: 5 },
  );
  const hand = fc.option(
    fc.oneof(
      fc.constantFrom<HandChoice[]>('movable', 'open strings'),
      fc.integer({ min: 1, max: 24 }),
    ),
  );
  return fc.tuple(phrases(instrument, key), ruled, hand).map(([phrase, drawn, choice]) => {
    const rulings: Ruling[] = [];
    let note = 0;
    for (const [left, length, named, single] of drawn) {
      const from = note + left;
      note = from + length;
      if (note > phrase.notes.length) break;
      if (single && named) rulings.push({ note: from, chord: named });
      else rulings.push({ span: [from, note], ...(named && { chord: named }) });
    }
    return {
      ...phrase,
      ...(rulings.length > 0 && { rulings }),
      ...(choice !== null && { hand: choice }),
    };
  });
}

/** Drills of so many phrases; none where there is none. */
function phraseDrills(count: number): fc.Arbitrary<OfPhrases[]> {
  if (count === 0) return fc.constant([]);
  const numbers = someOf(Array.from({ length: count }, (_, i) => i + 1));
  const drill = fc.record(
    { kind: fc.constantFrom(...kindsOf('phrase'), 'echo'), phrases: numbers },
    { requiredKeys: ['kind'] },
  ) as fc.Arbitrary<OfPhrases>;
  const play = fc.record(
    { kind: fc.constant('play' as const), phrases: numbers, tempo: fc.constantFrom(30, 72, 240) },
    { requiredKeys: ['kind'] },
  );
  return fc.array(fc.oneof(drill, play), { maxLength: 5 });
}

/** Marks on items of a key and an instrument. */
function marks(instrument: Instrument, key: Key): fc.Arbitrary<Marks> {
  const whole = keyName(parentKey(key));
  const on = (kind: string, rest: fc.Arbitrary<string>) =>
    fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.constantFrom(...SIZES), rest)
      .map(([degree, size, where]) =>
        [kind, whole, degree, size, instrumentId(instrument), where].join(':'),
      );
  const places = fc
    .tuple(fc.constantFrom('6-5', '4-3', '5-4-3-2'), fc.constantFrom('1-7', '5-12'))
    .map((where) => where.join(':'));
  const heard = fc.constantFrom(...CONTOURS).map((contour) => `${contour}:72`);
  const excerpt = fc.constantFrom('ii7 5/3 4/5=1 4/1', '72 V 3/3 -1/3 3/5? 2/3 viiø7 1/1');
  const drilled = ([...kindsOf('phrase'), 'play', 'echo'] as const).map((kind) =>
    on(kind, excerpt),
  );
  const ways = places.map((where) => `${where}:up:72`);
  const id = fc.oneof(
    on('spot', places),
    on('place', places),
    on('trace', heard),
    on('play', ways),
    on('echo', heard),
    ...drilled,
  );
  return fc.dictionary(id, fc.constantFrom<Mark[]>(1, 2, 3, 4, 5), { minKeys: 1, maxKeys: 30 });
}

export const decks: fc.Arbitrary<Deck> = fc
  .tuple(instruments, keys)
  .chain(([instrument, key]) => decksOf(instrument, key))
  .chain((deck) =>
    phraseDrills(deck.phrases.length).map((more) => ({
      ...deck,
      drills: [...deck.drills, ...more],
    })),
  )
  // More than a lesson takes is refused, which has tests of its own.
  .filter((deck) => costFault(deck) === null);

function decksOf(instrument: Instrument, key: Key): fc.Arbitrary<Deck> {
  return fc.record(
    {
      title: line(80),
      note: fc.oneof(line(500), fc.constant('First line.\nSecond line.')),
      lessonDay: fc.constantFrom(null, '2026-12-01', '2028-02-29'),
      instrument: fc.constant(instrument),
      key: fc.constant(key),
      // No chords stand on a scale of fewer than seven notes.
      drills: fc.array(drills(instrument), { maxLength: hasSevenNotes(key.scale) ? 5 : 0 }),
      phrases: fc.array(taught(instrument, key), { maxLength: 3 }),
      marks: marks(instrument, key),
    },
    { requiredKeys: ['title', 'note', 'lessonDay', 'instrument', 'key', 'drills', 'phrases'] },
  );
}
