import * as fc from 'fast-check';
import { parseMidi } from 'midi-file';
import ToneMidi from '@tonejs/midi';
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
  it('reads back to the pitches, times and tempo it was written from', () => {
    fc.assert(
      fc.property(phrases(GUITAR, key), (phrase) => {
        const read = readMidi(writeMidi(phrase, 'Phrase'), { key });
        expect(read).toEqual({ phrase: kept(phrase), remarks: [] });
      }),
    );
  });

  it('keeps sevenths and ninths of a beat exact', () => {
    const phrase = phraseOf('Bb3 for 1/7', 'C4', 'D4 for 1/9', 'Eb4 at 3');
    expect(readMidi(writeMidi(phrase, ''), { key })).toMatchObject({ phrase });
  });

  it('puts triplets on every 160th of 480 ticks, as another library reads it', () => {
    const file = new ToneMidi.Midi(writeMidi(phraseOf('Bb3 for 1/3', 'D4', 'F4'), 'Phrase'));
    expect(file.header.ppq).toBe(480);
    expect(file.name).toBe('Phrase');
    expect(file.header.tempos[0]!.bpm).toBeCloseTo(72, 3);
    expect(file.header.timeSignatures[0]!.timeSignature).toEqual([4, 4]);
    expect(
      file.tracks[0]!.notes.map(({ midi, ticks, durationTicks }) => [midi, ticks, durationTicks]),
    ).toEqual([
      [58, 0, 160],
      [62, 160, 160],
      [65, 320, 160],
    ]);
  });

  it('is read as another library reads it: parts of two channels, a pitch that begins again', () => {
    const midi = new ToneMidi.Midi();
    midi.header.setTempo(90);
    for (const [channel, pitches] of [
      [0, [58, 62, 62, 65]],
      [1, [46, 53, 46]],
      [9, [36, 38]],
    ] as const) {
      const track = midi.addTrack();
      track.channel = channel;
      for (const [i, pitch] of pitches.entries()) {
        track.addNote({ midi: pitch, ticks: i * 240, durationTicks: 240 });
      }
    }
    const file = midi.toArray();
    const parts = [0, 1, 2].map((track) => readMidi(file, { key, track }));
    const found = parts.map((part) => ('phrase' in part ? part.phrase.notes : part.fault));
    const half = { n: 1, d: 2 };
    expect(found).toMatchObject([
      [58, 62, 62, 65].map((pitch) => ({ midi: pitch, length: half })),
      [46, 53, 46].map((pitch) => ({ midi: pitch, length: half })),
      'There are no notes in this MIDI file.',
    ]);
    expect(parts[0]).toMatchObject({ phrase: { tempo: 90 } });
  });

  // Standard MIDI Files 1.0: a time signature has its lower number as a power of two.
  it('says its name and its bar, as midi-file reads it', () => {
    for (const bar of [3, 4]) {
      const file = parseMidi(writeMidi(phraseOf('Bb3', 'D4'), 'Quay', bar));
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
  it('leaves drums out, and says of which part it is', () => {
    const midi = new ToneMidi.Midi();
    for (const [channel, pitch] of [
      [9, 38],
      [10, 58],
      [0, 62],
    ] as const) {
      const track = midi.addTrack();
      track.channel = channel;
      track.addNote({ midi: pitch, ticks: 0, durationTicks: 480 });
    }
    const parts = [0, 1, 2].map((track) => readMidi(midi.toArray(), { key, track }));
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

  it('has a tempo that a phrase can have, the first of several', () => {
    const tempoOf = (...all: number[]) => {
      const midi = new ToneMidi.Midi();
      midi.header.fromJSON({
        name: '',
        ppq: 480,
        tempos: all.map((bpm, i) => ({ ticks: 480 * i, bpm })),
        timeSignatures: [],
        keySignatures: [],
        meta: [],
      });
      midi.addTrack().addNote({ midi: 60, ticks: 0, durationTicks: 480 });
      const read = readMidi(midi.toArray(), { key });
      return 'phrase' in read ? [read.phrase.tempo, ...read.remarks] : read.fault;
    };
    expect(tempoOf(72)).toEqual([72]);
    expect(tempoOf(300)).toEqual([240]);
    expect(tempoOf(20)).toEqual([30]);
    expect(tempoOf(90, 120)).toEqual([
      90,
      'The tempo stays at 90: the changes in it were left out.',
    ]);
  });

  it('gives the highest of notes that begin together, and says so', () => {
    const midi = new ToneMidi.Midi();
    const track = midi.addTrack();
    for (const [pitch, ticks] of [
      [58, 0],
      [65, 0],
      [62, 483],
    ] as const) {
      track.addNote({ midi: pitch, ticks, durationTicks: 240 });
    }
    expect(readMidi(midi.toArray(), { key })).toEqual({
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

  it('is refused where it is none, whatever it holds', () => {
    const whole = writeMidi(phraseOf('Bb3 for 1/3', 'D4', 'F4'), 'Phrase');
    const faults = [
      readMidi(new Uint8Array(), { key }),
      readMidi(new TextEncoder().encode('MThd, or so'), { key }),
      readMidi(whole.slice(0, 40), { key }),
    ];
    for (const read of faults) {
      expect(read).toEqual({ fault: expect.stringContaining('This is not a whole MIDI file') });
    }
    expect(readMidi(new Uint8Array(1_000_001), { key })).toHaveProperty('fault');
    fc.assert(
      fc.property(fc.nat({ max: whole.length - 1 }), fc.nat({ max: 255 }), (at, byte) => {
        const other = whole.slice();
        other[at] = byte;
        const read = readMidi(other, { key });
        expect('fault' in read ? read.fault : read.phrase.notes).not.toHaveLength(0);
      }),
    );
  });
});
