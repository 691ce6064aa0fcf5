import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frettedCost, holdsAt, type Hold } from '../../src/neck/effort.ts';
import { shiftsOn, stepCost } from '../../src/neck/step.ts';
import { barreLaid } from '../../src/neck/weights.ts';
import { fretDistances } from '../../src/neck/fret.ts';
import { fingering, type FingeringOptions, type LineNote } from '../../src/neck/fingering.ts';
import { fretsLeft, GUITAR, INSTRUMENTS, type Instrument } from '../../src/neck/instrument.ts';
import { midiAt } from '../../src/neck/place.ts';
import { parsePlace } from '../../src/neck/placeText.ts';
import { beats, toNumber } from '../../src/theory/rhythm.ts';

/** A line of even notes, `1/3` of a beat each. */
function line(midi: readonly number[], each = beats(1, 3)): LineNote[] {
  return midi.map((pitch, i) => ({ midi: pitch, at: beats(i * each.n, each.d), length: each }));
}

function placed(text: string): LineNote[] {
  const places = text.split(' ').map((place) => parsePlace(place)!);
  return line(places.map((place) => midiAt(GUITAR, place))).map((note, i) => ({
    ...note,
    place: places[i]!,
  }));
}

function play(instrument: Instrument, notes: readonly LineNote[], options?: FingeringOptions) {
  const found = fingering(instrument, notes, options);
  if (!found.playable) throw new Error(`${found.reason} (${found.at})`);
  return found;
}

/** The frets at which a pitch lies, one a string where there is one. */
function fretsOf(instrument: Instrument, midi: number): number[] {
  const open = instrument.tuning.map((_, i) => midiAt(instrument, { string: i + 1, fret: 0 }));
  return open.map((sounds) => midi - sounds).filter((fret) => fret > 0);
}

/** Every way to hold every note, tried whole; the cheapest cost. */
function exhaustive(
  instrument: Instrument,
  notes: readonly LineNote[],
  { frets, open, position }: Required<FingeringOptions>,
): { cost: number; paths: number } {
  const neck = fretDistances(instrument);
  const shifts = shiftsOn(neck);
  const holds = notes.map(({ midi }) =>
    instrument.tuning.flatMap((_, i) => {
      const fret = midi - midiAt(instrument, { string: i + 1, fret: 0 });
      const allowed = fret === 0 ? open : fret >= frets[0] && fret <= frets[1];
      return allowed
        ? holdsAt(neck, { string: i + 1, fret }, fretsLeft(instrument), {
            elsewhere: fretsOf(instrument, midi),
            ...(position ? { position } : {}),
          })
        : [];
    }),
  );
  let cost = Infinity;
  let paths = 0;
  const extend = (i: number, from: Hold | null, sum: number) => {
    if (i === notes.length) {
      paths++;
      cost = Math.min(cost, sum);
      return;
    }
    for (const hold of holds[i]!) extend(i + 1, hold, sum + hold.cost + between(i, from, hold));
  };
  const between = (i: number, from: Hold | null, to: Hold) => {
    if (!from) return to.barre ? barreLaid : 0;
    const [before, note] = [notes[i - 1]!, notes[i]!];
    const gap = toNumber(note.at) - toNumber(before.at);
    return stepCost(shifts, from, to, {
      haste: gap <= 0.5 ? 1 : Math.sqrt(0.5 / gap),
      repeated: before.midi === note.midi,
      rings: toNumber(before.length) > gap + 1e-9,
    });
  };
  extend(0, null, 0);
  return { cost, paths };
}

describe('the path found is the cheapest of all, by trying all', () => {
  const tunings = INSTRUMENTS.filter(({ name }) =>
    ['guitar', 'drop D', 'open G', 'bass', 'ukulele'].includes(name),
  );
  const phrase = fc.record({
    instrument: fc.constantFrom(...tunings),
    steps: fc.array(fc.integer({ min: 0, max: 14 }), { minLength: 2, maxLength: 3 }),
    each: fc.constantFrom(beats(1, 3), beats(2)),
    lowest: fc.integer({ min: 1, max: 7 }),
    open: fc.boolean(),
  });

  test('with the hand free', () => {
    fc.assert(
      fc.property(phrase, ({ instrument, steps, each, lowest, open }) => {
        const base = midiAt(instrument, { string: instrument.tuning.length, fret: lowest });
        const notes = line(
          steps.map((step) => base + step),
          each,
        );
        const options = { frets: [lowest, lowest + 4], open } as const;
        const found = fingering(instrument, notes, options);
        const tried = exhaustive(instrument, notes, { ...options, position: null as never });
        expect(found.playable).toBe(tried.paths > 0);
        expect(found.playable ? found.cost : Infinity).toBeCloseTo(tried.cost, 9);
      }),
      { numRuns: 40 },
    );
  });

  test('where a finger that stays on its string guides the shift', () => {
    const notes = line([43, 75, 76, 77]);
    const options = { frets: [3, 13], open: false } as const;
    const { cost } = play(GUITAR, notes, options);
    expect(cost).toBeCloseTo(
      exhaustive(GUITAR, notes, { ...options, position: null as never }).cost,
      9,
    );
  });

  test('with a position fixed, over longer phrases', () => {
    fc.assert(
      fc.property(
        phrase,
        fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 4, maxLength: 5 }),
        ({ instrument, lowest, open }, steps) => {
          const base = midiAt(instrument, { string: instrument.tuning.length, fret: lowest });
          const notes = line(steps.map((step) => base + step));
          const options = { frets: [lowest, lowest + 4], open, position: lowest } as const;
          const found = fingering(instrument, notes, options);
          const tried = exhaustive(instrument, notes, options);
          expect(found.playable ? found.cost : Infinity).toBeCloseTo(tried.cost, 9);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('a fingering', () => {
  test('goes over a note repeated in the one way there is, which costs nothing', () => {
    const same = line([50, 50, 50]);
    const { notes } = play(GUITAR, same, { frets: [5, 5], open: false, position: 5 });
    expect(notes.map(({ string, fret }) => `${string}/${fret}`)).toEqual(['5/5', '5/5', '5/5']);
    const dropD = INSTRUMENTS.find(({ name }) => name === 'drop D')!;
    expect(play(dropD, line([47, 45, 40, 40]), { frets: [2, 6], position: 2 }).notes).toHaveLength(
      4,
    );
  });

  test('sounds the notes it was given, inside the frets allowed, on every instrument', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...INSTRUMENTS),
        fc.integer({ min: 0, max: 5 }),
        fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 12 }),
        (listed, capo, steps) => {
          const instrument = { ...listed, capo };
          const lowest = Math.min(
            ...listed.tuning.map((_, i) => midiAt(instrument, { string: i + 1, fret: 0 })),
          );
          const midi = steps.map((step) => lowest + step);
          const found = fingering(instrument, line(midi), { frets: [1, 9] });
          const notes = found.playable ? found.notes : [];
          expect(notes.map((note) => midiAt(instrument, note))).toEqual(found.playable ? midi : []);
          for (const { fret, finger, hand } of notes) {
            expect(fret).toBeLessThanOrEqual(9);
            expect(finger === 0).toBe(fret === 0);
            expect(Math.abs(fret - hand) <= 4 || fret === 0).toBe(true);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('keeps places that are given', () => {
    const notes = placed('6/8 5/7 5/10 4/10');
    expect(play(GUITAR, notes).notes.map(({ string, fret }) => `${string}/${fret}`)).toEqual([
      '6/8',
      '5/7',
      '5/10',
      '4/10',
    ]);
  });

  test('can do without open strings, or stay in a position', () => {
    const midi = [45, 47, 48, 50];
    const frets = (options?: FingeringOptions) =>
      play(GUITAR, line(midi), options).notes.map(({ fret }) => fret);
    expect(frets()).toContain(0);
    expect(frets({ open: false })).not.toContain(0);
    const fifth = play(GUITAR, line(midi), { open: false, position: 5 }).notes;
    expect(fifth.map(({ hand }) => hand)).toEqual([5, 5, 5, 5]);
  });

  test('takes a note open that rings into the next, where it would hold a finger down', () => {
    const dry = line([59, 57, 50, 57, 62]);
    const ringing = dry.map((note, i) => (i === 2 ? { ...note, length: beats(1) } : note));
    const third = (notes: readonly LineNote[]) => play(GUITAR, notes).notes[2];
    expect(third(dry)).toMatchObject({ string: 5, fret: 5 });
    expect(third(ringing)).toMatchObject({ string: 4, fret: 0 });
  });

  test('lies the same from a capo as from the nut', () => {
    const plain = play({ ...GUITAR, capo: 0 }, placed('5/3 4/2 4/5'));
    const capoed = { ...GUITAR, capo: 2 };
    const moved = play(
      capoed,
      placed('5/3 4/2 4/5').map((note) => ({ ...note, midi: note.midi + 2 })),
    );
    expect(moved.notes.map(({ finger }) => finger)).toEqual(
      plain.notes.map(({ finger }) => finger),
    );
  });

  test('lets a grace note begin with the note it graces', () => {
    const [first, second] = line([64, 65]) as [LineNote, LineNote];
    const grace = { ...first, length: beats(0) };
    expect(play(GUITAR, [grace, { ...second, at: grace.at }]).notes).toHaveLength(2);
  });

  test('of nothing is nothing', () => {
    expect(fingering(GUITAR, [])).toEqual({ playable: true, notes: [], cost: 0 });
  });

  test('keeps a slide on one string and one finger, and a hammer-on on one string', () => {
    const [first, second, third] = line([60, 62, 63]) as [LineNote, LineNote, LineNote];
    const slid = play(GUITAR, [first, { ...second, articulation: 'slide' }, third]).notes;
    expect([slid[0]!.string, slid[0]!.finger]).toEqual([slid[1]!.string, slid[1]!.finger]);
    const hammered = play(GUITAR, [first, { ...second, articulation: 'hammer-on' }, third]).notes;
    expect(hammered[0]!.string).toBe(hammered[1]!.string);
    expect(hammered[0]!.finger).not.toBe(hammered[1]!.finger);
  });
});

test('a finger costs more up the neck: beyond the first position, and once more beyond the octave', () => {
  // Every fret 36 mm; the index finger over its own fret on string 1: 0.014 and 0.119 for each 100 mm from the first.
  const neck = Array.from({ length: 30 }, (_, fret) => 36 * fret);
  const costs = [1, 2, 12, 13, 14].map((fret) => frettedCost(neck, 1, fret, 1, fret));
  [0.014, 0.10684, 0.53524, 0.78308, 1.03092].forEach((cost, i) =>
    expect(costs[i]).toBeCloseTo(cost, 9),
  );
});

describe('a line that no hand can play says so and where', () => {
  const why = (notes: readonly LineNote[], options?: FingeringOptions) => {
    const found = fingering(GUITAR, notes, options);
    return found.playable ? null : `${found.at}: ${found.reason}`;
  };

  test('a note that the instrument does not have', () => {
    expect(why(line([60, 39]))).toBe('1: Note 2 lies outside what the guitar can sound.');
  });

  test('a note outside the frets or the position', () => {
    expect(why(line([60, 80]), { frets: [1, 5] })).toBe(
      '1: Note 2 lies outside the frets allowed.',
    );
    expect(why(placed('5/5 1/12'), { position: 5 })).toBe(
      '1: Note 2 is out of the hand’s reach in position 5.',
    );
  });

  test('a place that does not sound its note', () => {
    const [note] = placed('5/5');
    expect(why([{ ...note!, midi: 51 }])).toContain('Note 1 does not sound at its place');
  });

  test('a hammer-on downwards, a slide to another string', () => {
    const [first, second] = line([62, 60]) as [LineNote, LineNote];
    expect(why([first, { ...second, articulation: 'hammer-on' }])).toContain(
      'Note 2 cannot be joined to the one before it',
    );
    const [low, high] = placed('5/3 4/2') as [LineNote, LineNote];
    expect(why([low, { ...high, articulation: 'slide' }])).toContain('slide');
    const [open] = placed('1/0');
    expect(why([open!, { ...open!, at: beats(1), articulation: 'slide' }])).toContain('slide');
  });

  test('two notes at once', () => {
    const [first, second] = line([60, 64]) as [LineNote, LineNote];
    expect(why([first, { ...second, at: first.at }])).toBe(
      '1: Note 2 does not begin after the one before it: a line has one note at a time.',
    );
  });
});
