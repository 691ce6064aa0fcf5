import { describe, expect, it } from 'vitest';
import { renderClick } from '../../src/sound/click.ts';
import { agreed, clickIn } from '../../src/listening/delay.ts';
import { referenceOf } from '../../src/listening/listening.ts';
import { seeded } from '../../src/theory/random.ts';
import { heardIn, toldOf, words } from './hearing.ts';
import { inSteps, recordingOf, type Played } from './played.ts';

/** A seventh chord on B♭ up two strings and down again. */
const LINE = [58, 62, 65, 69, 65, 62, 58, 57];
const START = 0.9;
const RIGHT = LINE.map(() => 'right');

/** What is heard of notes in steps of a triplet at a tempo, ringing on. */
const at = (midis: readonly number[], tempo: number, options = {}) => {
  const step = 20 / tempo;
  return recordingOf(inSteps(midis, START, step), START + step * midis.length + 1, options);
};
const line = { notes: LINE, order: 'given' } as const;
const changed = (index: number, midi: number) => LINE.map((own, i) => (i === index ? midi : own));

describe('a phrase on the app’s own string', () => {
  it.each([60, 90, 120, 160])('is heard right at %i beats a minute, ringing', (tempo) => {
    const { notes, extras } = heardIn(at(LINE, tempo), line);
    expect(words({ notes, extras, restarts: 0, over: true })).toEqual(RIGHT);
    expect(extras).toEqual([]);
  });

  it.each([44100, 48000])('is timed within 5 ms at %i samples a second', (rate) => {
    const { notes } = heardIn(at(LINE, 120, { rate }), line, rate);
    const errors = notes.map((note, i) =>
      note?.verdict === 'right' ? note.time - START - i / 6 : Infinity,
    );
    expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.005);
  });

  it.each([
    [3, 68],
    [3, 70],
    [1, 74],
    [5, 57],
  ])('is told where its note %i was %i', (index, midi) => {
    const wanted: string[] = RIGHT.slice();
    wanted[index] = `wrong ${midi}`;
    expect(words(heardIn(at(changed(index, midi), 90), line))).toEqual(wanted);
  });

  it('never takes a neighbouring semitone or an octave for the note itself', () => {
    for (const by of [-12, -1, 1, 12]) {
      const told = words(heardIn(at(changed(4, LINE[4]! + by), 120), line));
      expect(told[4], `${by}`).not.toBe('right');
    }
  });

  it('is told where a note is missing, and where one came that was not asked for', () => {
    const without = LINE.filter((_, i) => i !== 2);
    expect(words(heardIn(at(without, 90), line))[2]).toBe('missing');
    const { notes, extras } = heardIn(at([...LINE.slice(0, 4), 60, ...LINE.slice(4)], 90), line);
    expect(notes.every((note) => note?.verdict === 'right')).toBe(true);
    expect(extras.map(({ heard, after }) => [heard, after])).toEqual([[60, 3]]);
  });

  it('may be begun late, stopped, and begun again', () => {
    const step = 0.2;
    const notes: Played[] = [
      ...inSteps(LINE.slice(0, 4), 3, step).map((note) => ({ ...note, until: 4.2 })),
      ...inSteps(LINE, 5, step),
    ];
    const heard = heardIn(recordingOf(notes, 8), line);
    expect(words(heard)).toEqual(RIGHT);
    expect(heard.restarts).toBe(1);
    expect(heard.notes[0]).toMatchObject({ time: expect.closeTo(5, 2) });
  });

  it('is not heard in silence: nothing is right and nothing wrong', () => {
    expect(words(heardIn(recordingOf([], 3), line))).toEqual(LINE.map(() => 'unheard'));
  });

  it('is waited for: before a beginning nothing is told, and nothing is over', () => {
    const told = toldOf({ do: 'follow', id: 1, expected: line }, recordingOf([], 12));
    expect(told.filter(({ id }) => id === 1).map((word) => word.told)).toEqual(['settled', 'over']);
    const late = inSteps(LINE, 11, 0.4);
    expect(words(heardIn(recordingOf(late, 16), line))).toEqual(RIGHT);
  });

  it('is over when six seconds have brought nothing more', () => {
    const half = inSteps(LINE.slice(0, 4), START, 0.2).map((note) => ({ ...note, until: 2 }));
    // Begun again four seconds later it is the same line; eight seconds later nobody listens any more.
    const restarts = (again: number) => {
      const notes = [...half, ...inSteps(LINE, again, 0.2)];
      return heardIn(recordingOf(notes, again + 3), line).restarts;
    };
    expect(restarts(6)).toBe(1);
    expect(restarts(10)).toBe(0);
  });

  it('is heard on a guitar that is off as a whole, once that is counted in', () => {
    const flat = at(LINE, 90, { cents: -12 });
    expect(words(heardIn(flat, { ...line, offset: -12 }))).toEqual(RIGHT);
  });

  // As far as is counted in (40 cents), on either side, and at another reference pitch.
  it.each([
    [-38, { offset: -38 }],
    [38, { offset: 38 }],
    [-65, { offset: -33.2, reference: 432 }],
  ])('is heard %i cents off where %o is counted in', (cents, playing) => {
    expect(words(heardIn(at(LINE, 90, { cents }), { ...line, ...playing }))).toEqual(RIGHT);
  });

  // 100 cents are a semitone: A sharp at 466.16 Hz (ISO 16). A = 432 is 31.77 cents under A = 440.
  it.each([
    [{}, 440],
    [{ offset: 100 }, 466.164],
    [{ offset: -31.7667 }, 432],
    [{ offset: 50, reference: 442 }, 454.952],
  ])('counts in %o as A = %f Hz', (playing, hertz) => {
    expect(referenceOf(playing)).toBeCloseTo(hertz, 2);
  });
});

describe('a chord’s notes in any order', () => {
  const any = { notes: [58, 62, 65], order: 'any' } as const;

  it('are each found, wherever they come', () => {
    expect(words(heardIn(at([65, 58, 62], 60), any))).toEqual(['right', 'right', 'right']);
  });

  it('may come together', () => {
    const together = [58, 62, 65].map((midi, i) => ({ midi, time: START + 0.012 * i }));
    expect(words(heardIn(recordingOf(together, 3), any))).toEqual(['right', 'right', 'right']);
  });

  it('are told apart from one beside them', () => {
    const heard = heardIn(at([65, 58, 63], 60), any);
    expect(words(heard).slice(0, 1)).toEqual(['right']);
    expect(words(heard)[1]).not.toBe('right');
    expect(heard.extras.map((extra) => extra.heard)).toEqual([63]);
  });
});

/** Adds a knock on the body, or a string struck dead: noise that dies away, as loud as a note. */
function knocked(samples: Float32Array, time: number): Float32Array {
  const chance = seeded(Math.round(1000 * time));
  const start = Math.round(time * 44100);
  for (let n = 0; n < 4000; n++)
    samples[start + n]! += 0.2 * (2 * chance.next() - 1) * Math.exp(-n / 1000);
  return samples;
}

describe('what is no note', () => {
  const any = { notes: [46, 48, 50, 51, 53, 55, 57, 58], order: 'any' } as const;
  const knocks = [1, 1.7, 2.4, 3.1].reduce(knocked, recordingOf([], 4));

  it('is counted as untold where notes may come in any order, and taken for none', () => {
    const heard = heardIn(knocks, any);
    expect(words(heard)).not.toContain('right');
    expect(heard.extras).toEqual([]);
    expect(heard.untold).toBe(4);
    // A string that is bent halfway to the next note.
    const between = heardIn(recordingOf([{ midi: 52, time: 1 }], 3, { cents: 50 }), any);
    expect(words(between)).not.toContain('right');
    expect(between).toMatchObject({ extras: [], untold: 1 });
    expect(heardIn(at([58, 53, 50], 60), any).untold).toBe(0);
  });

  it('is no other note in a line, and no note of free playing that is sure', () => {
    const step = 20 / 60;
    const played = inSteps(LINE, START, step).filter((_, i) => i !== 3);
    const samples = knocked(recordingOf(played, 5), START + 3 * step);
    const { notes, extras } = heardIn(samples, line);
    expect(words({ notes, extras, restarts: 0, over: true })).toEqual(RIGHT.with(3, 'unheard'));
    expect(extras).toEqual([]);
    const free = toldOf({ do: 'free', id: 1, playing: {} }, knocks);
    const told = free.flatMap((word) => (word.told === 'note' ? [word.note.confidence] : []));
    expect(Math.max(0, ...told)).toBeLessThan(0.5);
  });
});

describe('tuning up', () => {
  it.each([-40, -12, -4, 0, 7, 20])('reads a guitar that is %i cents off', (cents) => {
    const strings = [40, 45, 50, 55, 59, 64];
    const readings = strings.map((midi, string) => {
      const samples = recordingOf([{ midi, time: 0.8 }], 2.2, { cents });
      const told = toldOf({ do: 'tune', id: 1, strings, reference: 440 }, samples);
      const tunings = told.flatMap((word) => (word.told === 'string' ? [word.tuning] : []));
      expect(tunings.every((tuning) => tuning.string === string)).toBe(true);
      return tunings.at(-1)!;
    });
    for (const reading of readings) expect(Math.abs(reading.cents - cents)).toBeLessThan(1);
    expect(new Set(readings.map(({ state }) => state))).toEqual(
      new Set([Math.abs(cents) <= 5 ? 'ready' : Math.abs(cents) <= 15 ? 'near' : 'off']),
    );
  });
});

describe('the delay of sound', () => {
  const rate = 44100;
  const click = renderClick(rate);
  const heardClick = (late: number, level: number, noise: number) => {
    const samples = recordingOf([], 0.6, { noise });
    click.forEach((value, n) => (samples[Math.round(late * rate) + n]! += level * value));
    return samples;
  };

  it.each([0.02, 0.18, 0.45])('of %f s is found within a millisecond', (late) => {
    const found = clickIn(heardClick(late, 0.02, 1e-3), click);
    expect(Math.abs(found! / rate - late)).toBeLessThan(0.001);
  });

  it('is not made up where no click is heard', () => {
    expect(clickIn(heardClick(0.18, 0, 1e-3), click)).toBeNull();
    expect(agreed([0.18, 0.181, null, 0.35, 0.02])).toBeNull();
    expect(agreed([0.18, 0.181, null, 0.1805, 0.02])).toBe(0.1805);
  });
});

describe('free playing', () => {
  /** A scale up, a leap down, an arpeggio and the same note twice. */
  const FREELY = [58, 60, 62, 63, 65, 53, 58, 62, 65, 70, 70];
  const free = (samples: Float32Array) => {
    const told = toldOf({ do: 'free', id: 1, playing: {} }, samples);
    const notes = told.flatMap((word) => (word.told === 'note' ? [word.note] : []));
    return { notes, played: told.findLast((word) => word.told === 'played') };
  };

  it.each([60, 120])('is heard note by note at %i beats a minute', (tempo) => {
    const { notes, played } = free(at(FREELY, tempo));
    expect(notes.map(({ heard }) => heard)).toEqual(FREELY);
    for (const [i, { time, confidence }] of notes.entries()) {
      expect(Math.abs(time - START - (i * 20) / tempo)).toBeLessThan(0.01);
      expect(confidence).toBeGreaterThan(0);
      expect(confidence).toBeLessThan(1);
    }
    expect(played).toMatchObject({ notes });
  });

  it('is nothing in silence', () => {
    expect(free(recordingOf([], 3)).notes).toEqual([]);
  });

  it('is heard when a string is plucked, not when a louder one before is let go', () => {
    const notes = inSteps(FREELY, START, 0.25).map((note, i) => ({
      ...note,
      level: i % 2 ? 0.1 : 1,
      until: note.time + 0.245,
    }));
    const told = free(recordingOf(notes, 5)).notes;
    expect(told).toHaveLength(FREELY.length);
    told.forEach(({ time }, i) => expect(Math.abs(time - notes[i]!.time)).toBeLessThan(0.002));
  });

  it('is heard where a note is faint, if the line leaves room for it', () => {
    const scale = [58, 60, 62, 63, 65, 67, 65, 63, 62, 60, 58, 57];
    const faint = inSteps(scale, START, 0.25).map((note, i) => ({
      ...note,
      level: i === 9 ? 0.0225 : 1,
    }));
    const heard = (notes: readonly Played[]) =>
      free(recordingOf(notes, 5)).notes.map(({ heard: midi }) => midi);
    expect(heard(faint)).toEqual(scale);
    // Held twice as long instead, and where nothing is a step away from the notes beside.
    expect(heard(faint.filter((_, i) => i !== 9))).toEqual(scale.toSpliced(9, 1));
    const early = faint.map((note, i) =>
      i === 9 ? { ...note, time: note.time - 0.08, level: 0.0375 } : note,
    );
    expect(heard(early)).toEqual(scale.toSpliced(9, 1));
  });

  it('is no chord: of notes struck together one is told, and less surely than alone', () => {
    const together = [58, 62, 65].map((midi) => ({ midi, time: START }));
    const { notes } = free(recordingOf(together, 3));
    const [alone] = free(at([58], 60)).notes;
    expect(notes.length).toBeLessThanOrEqual(1);
    for (const note of notes) expect(note.confidence).toBeLessThan(alone!.confidence);
  });
});

describe('strokes on the strings', () => {
  const strokes = (samples: Float32Array) =>
    toldOf({ do: 'strikes', id: 1 }, samples).flatMap((word) =>
      word.told === 'strike' ? [word.time] : [],
    );
  const due = Array.from({ length: 24 }, (_, i) => START + i / 6);
  /** One string struck over and over, which sounds for so many seconds. */
  const struck = (sounding: number) =>
    recordingOf(
      due.map((time) => ({ midi: 57, time, until: time + sounding })),
      due.at(-1)! + 1.5,
    );

  it.each([
    ['muted', 0.03],
    ['sounding', 0.12],
  ])('are heard when they come where they are %s', (_, sounding) => {
    const told = strokes(struck(sounding));
    expect(told).toHaveLength(due.length);
    for (const [i, time] of told.entries()) expect(Math.abs(time - due[i]!)).toBeLessThan(0.01);
  });

  it('over several strings are one', () => {
    const chord = [45, 52, 57].map((midi, i) => ({ midi, time: START + i * 0.01 }));
    expect(strokes(recordingOf(chord, 3))).toHaveLength(1);
  });

  it('are none in silence, nor in the click', () => {
    expect(strokes(recordingOf([], 3))).toEqual([]);
    const clicked = recordingOf([], 4);
    const click = renderClick(44100);
    for (const time of [1, 1.5, 2, 2.5])
      click.forEach((value, n) => (clicked[Math.round(time * 44100) + n]! += 0.25 * value));
    expect(strokes(clicked)).toEqual([]);
  });
});
