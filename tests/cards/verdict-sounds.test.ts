/**
 * What a student hears when a verdict comes: the right answer, and after a wrong one what was answered instead. Pitches
 * are MIDI numbers; open strings and scales are written out here and not asked of the code.
 */
import { describe, expect, it } from 'vitest';
import { echo } from '../../src/cards/echo/index.ts';
import { phraseSound } from '../../src/cards/frame/phraseSound.ts';
import { fill } from '../../src/cards/fill/index.ts';
import { order } from '../../src/cards/order/index.ts';
import { place } from '../../src/cards/place/index.ts';
import { play } from '../../src/cards/play/index.ts';
import { pulse } from '../../src/cards/pulse/index.ts';
import { spot } from '../../src/cards/spot/index.ts';
import { trace } from '../../src/cards/trace/index.ts';
import { vary } from '../../src/cards/vary/index.ts';
import { readNotes } from '../../src/decks/notes.ts';
import type { Sounding } from '../../src/sound/sounding.ts';
import { itemIn } from './items.ts';
import { rows } from './rows.ts';

/** String 1 first. */
const OPEN = [64, 59, 55, 50, 45, 40];
const on = (capo: number, string: number, fret: number) => OPEN[string - 1]! + capo + fret;

const midis = (sounding: Sounding | null) => sounding!.notes.map(({ midi }) => midi);
const numbers = (text: string) => text.split(' ').map(Number);
/** How many semitones above the lowest pitch that any of them could have: 0 to 11. */
const classes = (all: readonly number[]) => all.map((midi) => midi % 12);
const onsets = (sounding: Sounding | null) => sounding!.notes.map(({ at }) => at);

/** Even triplets at 84, the last of them left to ring. */
function expectArpeggio(sounding: Sounding | null) {
  const { notes, tempo } = sounding!;
  expect(tempo).toBe(84);
  notes.forEach(({ at, length, strength, string }, i) => {
    expect(at).toBeCloseTo(i / 3, 9);
    expect(length).toBeCloseTo(i === notes.length - 1 ? 2 : 1 / 3, 9);
    expect([strength, string]).toEqual([undefined, undefined]);
  });
}

describe('a shape that was named', () => {
  // Item; capo; pitch classes (C = 0) of its chord; the degree answered instead, and its chord from the root up.
  it.each(
    rows(`
      Bb major:7:triad:guitar:3-2-1:5-9 | 0 | 9 0 3 | 5 | 5 9 0
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | 0 | 9 0 3 7 | 2 | 0 3 7 10
      A harmonic minor:7:seventh:guitar:4-3-2-1:5-9 | 0 | 8 11 2 5 | 2 | 11 2 5 9
      F# major:7:seventh:guitar:4-3-2-1:1-5 | 0 | 5 8 11 3 | 4 | 11 3 6 10
      Ab harmonic minor:3:triad:guitar:3-2-1:1-5 | 0 | 11 3 7 | 5 | 3 7 10
      D dorian:4:ninth:guitar+3:5-4-3-2:1-5 | 3 | 7 11 2 5 9 | 6 | 11 2 5 9 0
      E phrygian:2:eleventh:guitar:5-4-3-2:1-5 | 0 | 5 9 0 4 7 11 | 5 | 11 2 5 9 0 4
      Eb lydian:4:thirteenth:guitar:6-5-4-3:1-5 | 0 | 9 0 3 7 10 2 5 | 1 | 3 7 10 2 5 9 0
    `),
  )('%s sounds as its dots lie, then what was answered', (id, capo, chord, taken, other) => {
    for (const seed of [2, 3, 4, 5]) {
      const card = spot.ask(itemIn(spot, `spot:${id}`)!, seed);
      const why = spot.explain(card, spot.judge(card, taken), taken, 'english');
      const dots = card.shape.places.map(({ string, fret }) => on(Number(capo), string, fret));
      expect(midis(why.sound)).toEqual(dots);
      expect(new Set(classes(dots))).toEqual(new Set(numbers(chord)));
      expect(classes(midis(why.otherSound))).toEqual(numbers(other));
      const [root, ...rest] = midis(why.otherSound);
      expect(Math.abs(root! - dots[0]!)).toBeLessThanOrEqual(6);
      rest.forEach((midi, i) => expect(midi - [root!, ...rest][i]!).toBeLessThan(12));
      expect(rest).toEqual(rest.toSorted((a, b) => a - b));
      expectArpeggio(why.sound);
      expectArpeggio(why.otherSound);
      const right = spot.explain(
        card,
        { right: true, takenFor: null },
        id.split(':')[1]!,
        'english',
      );
      expect([midis(right.sound), right.otherSound]).toEqual([dots, null]);
    }
  });
});

describe('a chord that was placed', () => {
  // Item; answer; what is sounded as right; what was tapped, from the lowest up, or nothing.
  it.each(
    rows(`
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | 4/7 3/8 2/8 1/8 | 57 63 67 72 |
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | 1/8 2/8 3/8 4/7 | 57 63 67 72 |
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | 4/7 3/7 2/8 1/8 | 57 63 67 72 | 57 62 67 72
      G# harmonic minor:5:triad:guitar+2:5-4-3:1-7 | 5/4 4/3 3/1 | 51 55 58 |
      G# harmonic minor:5:triad:guitar+2:5-4-3:1-7 | 3/1 4/3 5/3 | 51 55 58 | 50 55 58
    `),
  )('%s at %s', (id, answer, right, tapped) => {
    const card = place.ask(itemIn(place, `place:${id}`)!, 2);
    const why = place.explain(card, place.judge(card, answer), answer, 'english');
    expect(midis(why.sound)).toEqual(numbers(right));
    expectArpeggio(why.sound);
    if (tapped === '') expect(why.otherSound).toBeNull();
    else {
      expect(midis(why.otherSound)).toEqual(numbers(tapped));
      expectArpeggio(why.otherSound);
    }
  });
});

describe('a path that was heard', () => {
  // Pitch classes of the degrees; what a guitar's lines lie between: two octaves from a fifth above its lowest string.
  it.each(
    rows(`
      Bb major:2:seventh:guitar:turn:72 | 10 0 2 3 5 7 9 | 72 | 0 | 3
      F# major:7:triad:guitar:up:96 | 6 8 10 11 1 3 5 | 96 | 0 | 3
      D dorian:4:triad:guitar+5:down:60:eighths | 2 4 5 7 9 11 0 | 60 | 5 | 2
      G minor:5:triad:guitar:skip:110 | 7 9 10 0 2 3 5 | 110 | 0 | 3
    `),
  )('%s sounds as it was, then the path that was tapped', (id, scale, tempo, capo, part) => {
    for (const seed of [4, 5, 6, 7]) {
      const card = trace.ask(itemIn(trace, `trace:${id}`)!, seed);
      const degrees = (sounding: Sounding | null) =>
        classes(midis(sounding))
          .map((one) => numbers(scale).indexOf(one) + 1)
          .join(' ');
      for (const { path, heights } of card.choices) {
        const why = trace.explain(card, trace.judge(card, path), path, 'english');
        expect(degrees(why.sound)).toBe(card.path);
        expect(midis(why.sound)).toEqual(card.phrase.notes.map(({ midi }) => midi));
        expect(why.sound.tempo).toBe(Number(tempo));
        expect(Math.min(...midis(why.sound))).toBeGreaterThanOrEqual(47 + Number(capo));
        expect(Math.max(...midis(why.sound))).toBeLessThanOrEqual(71 + Number(capo));
        onsets(why.sound).forEach((at, i) => expect(at).toBeCloseTo(i / Number(part), 9));
        // On strings that have them, at places inside the neck.
        for (const { midi, string } of why.sound.notes)
          expect(midi - on(Number(capo), string!, 0)).toBeGreaterThanOrEqual(0);
        if (path === card.path) expect(why.otherSound).toBeNull();
        else {
          expect(degrees(why.otherSound)).toBe(path);
          expect(onsets(why.otherSound)).toEqual(onsets(why.sound));
          expect(why.otherSound!.tempo).toBe(Number(tempo));
          // Higher and lower as it is drawn.
          const ups = (all: readonly number[]) => all.slice(1).map((one, i) => one > all[i]!);
          expect(ups(midis(why.otherSound))).toEqual(ups(heights));
        }
      }
    }
  });
});

describe('what of a phrase was heard', () => {
  const STAIRS =
    'order:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3 vi 4/5 3/3 2/3';
  const [ii, V, I, vi] = [
    [60, 63, 67],
    [69, 65, 60],
    [62, 58, 53],
    [55, 58, 62],
  ];

  it.each([
    ['2 1 5 6', [ii, I, V, vi]],
    ['2 5 6 1', [ii, V, vi, I]],
    ['2 6 1 5', [ii, vi, I, V]],
  ] as const)('an order taken for %s sounds in that order', (answer, groups) => {
    const item = itemIn(order, STAIRS)!;
    const card = Array.from({ length: 40 }, (_, seed) => order.ask(item, seed)).find(
      ({ choices }) => choices.some((one) => one.answer === answer),
    )!;
    const why = order.explain(card, order.judge(card, answer), answer, 'english');
    expect(midis(why.sound)).toEqual([ii, V, I, vi].flat());
    expect(midis(why.otherSound)).toEqual(groups.flat());
    onsets(why.otherSound).forEach((at, i) => expect(at).toBeCloseTo(i / 3, 9));
  });

  // C4 E♭4 G4 without its E♭: the degree answered, as near to E♭4 as can be.
  it.each([
    ['3', 62],
    ['5', 65],
    ['2', 60],
    ['6', 67],
    ['1', 58],
  ])('a missing note taken for %s sounds with MIDI %i in its place', (answer, midi) => {
    const card = fill.ask(itemIn(fill, 'fill:Bb major:4:triad:guitar:72 ii 3/5 2/4? 1/3')!, 1);
    const why = fill.explain(card, fill.judge(card, answer), answer, 'english');
    expect(card.heard.notes.map((note) => note.midi)).toEqual([60, 67]);
    expect(midis(why.sound)).toEqual([60, 63, 67]);
    expect(midis(why.otherSound)).toEqual([60, midi, 67]);
    expect(onsets(why.otherSound)).toEqual(onsets(why.sound));
  });

  it('a variation taken for another sounds, and then the other', () => {
    const phrase = 'ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3';
    const item = itemIn(vary, `vary:Bb major:2:triad:guitar:72 ${phrase}`)!;
    const notes = [ii, V, I].flat() as number[];
    const sounds: Record<string, number[]> = {
      backwards: notes.toReversed(),
      'from the second note': [...notes.slice(1), notes[0]!],
      'chords in opposite order': [I, V, ii].flat() as number[],
    };
    const heard = new Set<string>();
    for (let seed = 0; seed < 40; seed++) {
      const card = vary.ask(item, seed);
      for (const { name } of card.choices) {
        const why = vary.explain(card, vary.judge(card, name), name, 'english');
        const [right, other] = [sounds[card.right.name], sounds[name]];
        if (right) expect(midis(why.sound)).toEqual(right);
        if (name === card.right.name) expect(why.otherSound).toBeNull();
        else if (other) {
          expect(midis(why.otherSound)).toEqual(other);
          heard.add(name);
        }
      }
    }
    expect(heard.size).toBe(3);
  });

  it('sounds each note on its string', () => {
    const card = play.ask(itemIn(play, 'play:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3')!, 2);
    const right = play.explain(card, play.judge(card, '60 63 67'), '60 63 67', 'english');
    expect(right.sound.notes.map(({ midi, string }) => [midi, string])).toEqual([
      [60, 3],
      [63, 2],
      [67, 1],
    ]);
  });

  it('is joined where the phrase joins it', () => {
    const read = readNotes(['C4 for 1/2 on 3/5', 'Eb4 on 3/8 by slide', 'G4 on 1/3']);
    if ('fault' in read) throw new Error(read.fault);
    const { notes, tempo } = phraseSound({ tempo: 72, notes: read });
    expect(tempo).toBe(72);
    expect(notes).toEqual([
      { midi: 60, at: 0, length: 0.5, string: 3 },
      { midi: 63, at: 0.5, length: 0.5, string: 3, articulation: 'slide' },
      { midi: 67, at: 1, length: 0.5, string: 1 },
    ]);
  });

  it('played back wrong sounds as it was played', () => {
    const card = echo.ask(itemIn(echo, 'echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3')!, 2);
    const why = echo.explain(card, echo.judge(card, '60 65 -'), '60 65 -', 'english');
    expect(midis(why.sound)).toEqual([60, 63, 67]);
    expect(midis(why.otherSound)).toEqual([60, 65]);
  });
});

describe('time that was kept', () => {
  // The tonic from the open A string up.
  it.each([
    ['Bb major', 58],
    ['A minor', 57],
    ['G# minor', 68],
    ['Db major', 61],
  ])('in %s is tapped out on MIDI %i, what is late of all taps left out', (key, midi) => {
    const card = pulse.ask(itemIn(pulse, `pulse:${key}:1:triad:guitar:eighths:60:beat`)!, 2);
    const { length } = card.plan.slots;
    const answer = Array.from({ length }, (_, n) => 500 * n + 40).join(' ');
    const why = pulse.explain(card, pulse.judge(card, answer), answer, 'english');
    expect(new Set([...midis(why.sound), ...midis(why.otherSound)])).toEqual(new Set([midi]));
    expect(why.sound.notes).toHaveLength(length);
    onsets(why.sound).forEach((at, n) => expect(at).toBeCloseTo(n / 2, 9));
    onsets(why.otherSound).forEach((at, n) => expect(at).toBeCloseTo(n / 2, 6));
  });
});
