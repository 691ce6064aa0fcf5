import * as fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { readMidi, writeMidi } from '../../../src/decks/notation/midi.ts';
import { readNotes } from '../../../src/decks/notes.ts';
import { GUITAR } from '../../../src/neck/instrument.ts';
import type { Phrase } from '../../../src/theory/phrase.ts';
import { add, compare } from '../../../src/theory/rhythm.ts';
import { phrases } from '../arbitrary.ts';

const key = { tonic: 'Bb', scale: 'major' } as const;

function phraseOf(...texts: string[]): Phrase {
  const notes = readNotes(texts);
  if ('fault' in notes) throw new Error(notes.fault);
  return { tempo: 72, notes };
}

/** What a MIDI file can keep of a phrase: a pitch ends where it begins again. */
const kept = ({ tempo, notes }: Phrase) => ({
  tempo,
  notes: notes.map(({ midi, name, at, length }, i) => {
    const again = notes.slice(i + 1).find((note) => note.midi === midi);
    const rings = again && compare(add(at, length), again.at) > 0;
    return { midi, name, at, length: rings ? expect.anything() : length };
  }),
});

describe('a MIDI file', () => {
  it('reads back to the pitches, times and tempo it was written from', async () => {
    await fc.assert(
      fc.asyncProperty(phrases(GUITAR, key), async (phrase) => {
        const read = await readMidi(await writeMidi(phrase, 'Phrase'), { key });
        expect(read).toEqual({ phrase: kept(phrase), remarks: [] });
      }),
    );
  });

  it('keeps sevenths and ninths of a beat exact', async () => {
    const phrase = phraseOf('Bb3 for 1/7', 'C4', 'D4 for 1/9', 'Eb4 at 3');
    expect(await readMidi(await writeMidi(phrase, ''), { key })).toMatchObject({ phrase });
  });

  it('puts triplets on every 160th of 480 ticks, as midi-file reads it', async () => {
    const file = parseMidi(await writeMidi(phraseOf('Bb3 for 1/3', 'D4', 'F4'), 'Phrase'));
    expect(file.header.ticksPerBeat).toBe(480);
    let at = 0;
    const heard = file.tracks[1]!.flatMap((event) => {
      at += event.deltaTime;
      return event.type === 'noteOn' ? [[event.noteNumber, at]] : [];
    });
    expect(heard).toEqual([
      [58, 0],
      [62, 160],
      [65, 320],
    ]);
    const tempo = file.tracks[0]!.find((event) => event.type === 'setTempo');
    expect(tempo).toMatchObject({ microsecondsPerBeat: 833_333 });
  });

  // Standard MIDI Files 1.0: a time signature has its lower number as a power of two.
  it('says its name and its bar, as midi-file reads it', async () => {
    for (const bar of [3, 4]) {
      const file = parseMidi(await writeMidi(phraseOf('Bb3', 'D4'), 'Quay', bar));
      const events = file.tracks.flat();
      expect(events.find((event) => event.type === 'timeSignature')).toMatchObject({
        numerator: bar,
        denominator: 4,
      });
      expect(events.filter((event) => event.type === 'trackName')).toContainEqual(
        expect.objectContaining({ text: 'Quay' }),
      );
      const [on] = events.filter((event) => event.type === 'noteOn');
      // Four fifths of 127.
      expect(on).toMatchObject({ velocity: Math.floor(0.8 * 127) });
    }
  });

  // General MIDI: the tenth channel has no pitches.
  it('leaves drums out, and says of which part it is', async () => {
    const { Midi } = await import('@tonejs/midi').then((module) =>
      'default' in module ? (module.default as typeof module) : module,
    );
    const midi = new Midi();
    for (const [channel, pitch] of [
      [9, 38],
      [10, 58],
      [0, 62],
    ] as const) {
      const track = midi.addTrack();
      track.channel = channel;
      track.addNote({ midi: pitch, ticks: 0, durationTicks: 480 });
    }
    const parts = await Promise.all(
      [0, 1, 2].map((track) => readMidi(midi.toArray(), { key, track })),
    );
    expect(parts).toMatchObject([
      {
        phrase: { notes: [{ midi: 58 }] },
        remarks: ['This is part 1 of 2; the others were left out.'],
      },
      {
        phrase: { notes: [{ midi: 62 }] },
        remarks: ['This is part 2 of 2; the others were left out.'],
      },
      { fault: 'There are no notes in this MIDI file.' },
    ]);
  });

  it('has a tempo that a phrase can have, the first of several', async () => {
    const { Midi } = await import('@tonejs/midi').then((module) =>
      'default' in module ? (module.default as typeof module) : module,
    );
    const tempoOf = async (...all: number[]) => {
      const midi = new Midi();
      midi.header.fromJSON({
        name: '',
        ppq: 480,
        tempos: all.map((bpm, i) => ({ ticks: 480 * i, bpm })),
        timeSignatures: [],
        keySignatures: [],
        meta: [],
      });
      midi.addTrack().addNote({ midi: 60, ticks: 0, durationTicks: 480 });
      const read = await readMidi(midi.toArray(), { key });
      return 'phrase' in read ? [read.phrase.tempo, ...read.remarks] : read.fault;
    };
    expect(await tempoOf(72)).toEqual([72]);
    expect(await tempoOf(300)).toEqual([240]);
    expect(await tempoOf(20)).toEqual([30]);
    expect(await tempoOf(90, 120)).toEqual([
      90,
      'The tempo stays at 90: the changes in it were left out.',
    ]);
  });

  it('gives the highest of notes that begin together, and says so', async () => {
    const { Midi } = await import('@tonejs/midi').then((module) =>
      'default' in module ? (module.default as typeof module) : module,
    );
    const midi = new Midi();
    const track = midi.addTrack();
    for (const [pitch, ticks] of [
      [58, 0],
      [65, 0],
      [62, 483],
    ] as const) {
      track.addNote({ midi: pitch, ticks, durationTicks: 240 });
    }
    expect(await readMidi(midi.toArray(), { key })).toEqual({
      phrase: {
        tempo: 120,
        notes: [
          { midi: 65, name: 'F', at: { n: 0, d: 1 }, length: { n: 1, d: 2 } },
          { midi: 62, name: 'D', at: { n: 1, d: 1 }, length: { n: 1, d: 2 } },
        ],
      },
      remarks: [
        'Times were rounded to 1/24 of a beat.',
        'Of notes that begin together only the highest was kept.',
      ],
    });
  });

  it('is refused where it is none, whatever it holds', async () => {
    const whole = await writeMidi(phraseOf('Bb3 for 1/3', 'D4', 'F4'), 'Phrase');
    const faults = [
      readMidi(new Uint8Array(), { key }),
      readMidi(new TextEncoder().encode('MThd, or so'), { key }),
      readMidi(whole.slice(0, 40), { key }),
    ];
    for (const read of await Promise.all(faults)) {
      expect(read).toEqual({ fault: expect.stringContaining('This is not a whole MIDI file') });
    }
    expect(await readMidi(new Uint8Array(1_000_001), { key })).toHaveProperty('fault');
    await fc.assert(
      fc.asyncProperty(
        fc.nat({ max: whole.length - 1 }),
        fc.nat({ max: 255 }),
        async (at, byte) => {
          const other = whole.slice();
          other[at] = byte;
          const read = await readMidi(other, { key });
          expect('fault' in read ? read.fault : read.phrase.notes).not.toHaveLength(0);
        },
      ),
    );
  });
});
