/** Files and texts made to take long: each is refused, or read, in no more time than others. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMidi } from '../../../src/decks/notation/midi.ts';
import { midiFault } from '../../../src/decks/notation/midiBounds.ts';
import { readTablature } from '../../../src/decks/notation/tablature-reader.ts';
import { GUITAR } from '../../../src/neck/instrument.ts';
import { beats } from '../../../src/theory/rhythm.ts';

const key = { tonic: 'Bb', scale: 'major' } as const;

const word = (value: number, bytes: number) =>
  Array.from({ length: bytes }, (_, k) => Math.floor(value / 256 ** (bytes - 1 - k)) % 256);

/** A Standard MIDI File of 480 ticks a beat with these tracks. */
function file(...tracks: readonly number[][]): Uint8Array {
  const chunk = (name: string, body: number[]) => [
    ...Array.from(name, (letter) => letter.charCodeAt(0)),
    ...word(body.length, 4),
    ...body,
  ];
  const head = [...word(1, 2), ...word(tracks.length, 2), ...word(480, 2)];
  return Uint8Array.from([chunk('MThd', head), ...tracks.map((one) => chunk('MTrk', one))].flat());
}

const END = [0, 0xff, 0x2f, 0];
const note = (midi: number) => [0, 0x90, midi, 80, 100, 0x80, midi, 0];
const notes = (count: number) => Array.from({ length: count }, (_, k) => note(60 + (k % 12)));

function fault(bytes: Uint8Array): string {
  const read = readMidi(bytes, { key });
  return 'fault' in read ? read.fault : '';
}

describe('a MIDI file', () => {
  it('of far more notes, events or tracks than a phrase has is refused before it is parsed', () => {
    const many = file([...notes(100_000).flat(), ...END]);
    expect(many.length).toBeLessThan(1_000_000);
    const controllers = Array.from({ length: 30_000 }, (_, k) => [1, 0xb0, 7, k % 128]);
    for (const bytes of [
      many,
      file([...notes(1001).flat(), ...END]),
      file([...controllers.flat(), ...END]),
      file(...Array.from({ length: 500 }, () => END)),
    ]) {
      expect(fault(bytes)).toMatch(/^This MIDI file holds far more than a phrase/);
    }
  });

  it('with a length that would turn a reader back is refused', () => {
    const turning = [0, 0xff, 1, 0xff, 0xff, 0xff, 0xff, 0x7f];
    expect(fault(file([...turning, ...END]))).toMatch(/not a whole MIDI file/);
    const bytes = file(notes(3).flat());
    expect(fault(bytes.subarray(0, -4))).toMatch(/not a whole MIDI file/);
  });

  it('of a phrase passes, with running status and messages of every sort', () => {
    const track = [
      [0, 0xff, 3, 2, 65, 66],
      [0, 0xf0, 2, 1, 0xf7],
      [0, 0xc0, 5, 0, 0xd0, 5, 0, 0xe0, 0, 64, 0, 0xb0, 7, 100, 0, 0xa0, 60, 1],
      [0, 0x90, 60, 80, 0x83, 0x60, 60, 0, 0, 62, 80, 0x83, 0x60, 62, 0],
      END,
    ].flat();
    expect(midiFault(file(track))).toBeNull();
    expect(readMidi(file(track), { key })).toMatchObject({
      phrase: { notes: [{ midi: 60 }, { midi: 62 }] },
    });
  });

  it('of whatever bytes is read or refused with a sentence', () => {
    const whole = Array.from(file([...notes(6).flat(), ...END]));
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(8), fc.uint8Array(), (at, cut, put) => {
        const bytes = Uint8Array.from([...whole.slice(0, at), ...put, ...whole.slice(at + cut)]);
        expect(fault(bytes)).toMatch(/^$|\.$/);
      }),
    );
  });
});

describe('pasted text', () => {
  const read = (text: string) =>
    readTablature(text, {
      instrument: GUITAR,
      key,
      length: beats(1, 3),
      tempo: 72,
      beatsPerBar: 4,
    });
  const system = 'e|--1--|\nB|-----|\nG|-----|\nD|-----|\nA|-----|\nE|-----|\n';

  it.each([
    ['spaces', ' '.repeat(20_000), 'faults'],
    ['tabs', '\t'.repeat(20_000), 'faults'],
    ['spaces before a word', `${' '.repeat(19_990)}word`, 'faults'],
    ['empty lines behind a phrase', system + '\n'.repeat(19_000), 'phrase'],
    ['spaces behind a label', `e${' '.repeat(19_990)}x`, 'faults'],
  ])('of twenty thousand characters, %s, takes no longer than other text', (_, text, part) => {
    const taken = (of: string) => {
      const start = performance.now();
      read(of);
      return performance.now() - start;
    };
    expect(read(text)).toHaveProperty(part);
    // It was ten times the music's where each of many spaces was tried as the last one.
    const music = `${system}\n`.repeat(20_000 / (system.length + 1));
    expect(taken(text)).toBeLessThan(3 * taken(music));
  });
});
