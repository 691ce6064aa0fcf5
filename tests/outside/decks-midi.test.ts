import { describe, expect, it } from 'vitest';
import { readMidi } from '../../src/decks/notation/midi.ts';

/** Standard MIDI Files 1.0 (MIDI Manufacturers Association), the worked example of a format 0 file. */
const EXAMPLE =
  '4D546864 00000006 0000 0001 0060 4D54726B 0000003B 00FF580404021808 00FF510307A120 00C005 00C12E 00C246 ' +
  '00923060 003C60 60914340 60904C20 8140823040 003C40 00814340 00804C40 00FF2F00';

const file = Uint8Array.from(Buffer.from(EXAMPLE.replaceAll(' ', ''), 'hex'));
const key = { tonic: 'C', scale: 'major' } as const;

describe('the worked example of the Standard MIDI File specification', () => {
  it('is 81 bytes long', () => {
    expect(file).toHaveLength(81);
  });

  // At 96 ticks a quarter: 48 and 60 at tick 0, 67 at 96, 76 at 192, all off at 384; tempo 120.
  it.each([
    [67, { n: 1, d: 1 }, { n: 3, d: 1 }, 'G'],
    [76, { n: 2, d: 1 }, { n: 2, d: 1 }, 'E'],
    [60, { n: 0, d: 1 }, { n: 4, d: 1 }, 'C'],
  ])('has note %i where it says', (midi, at, length, name) => {
    const parts = [0, 1, 2].map((track) => readMidi(file, { key, track }));
    const phrases = parts.flatMap((part) => ('phrase' in part ? [part.phrase] : []));
    expect(phrases).toHaveLength(3);
    expect(phrases).toContainEqual({ tempo: 120, notes: [{ midi, name, at, length }] });
  });
});
