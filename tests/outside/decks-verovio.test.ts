import { parseMidi } from 'midi-file';
import { VerovioToolkit } from 'verovio/esm';
import createModule from 'verovio/wasm';
import { describe, expect, it } from 'vitest';
import { writeMusicXml } from '../../src/decks/notation/musicxml.ts';
import { INSTRUMENTS } from '../../src/neck/instrument.ts';
import type { Instrument } from '../../src/neck/instrument.ts';
import { midiAt } from '../../src/neck/place.ts';
import { spell } from '../../src/theory/spell.ts';
import { seeded } from '../../src/theory/random.ts';
import { beats, toNumber } from '../../src/theory/rhythm.ts';

/**
 * Verovio 6.3.0 (rism-digital/verovio) engraves MusicXML; of tablature it sounds string, fret and tuning and does not
 * look at the written pitch: an independent check of where we say that notes are.
 */
const toolkit = new VerovioToolkit(await createModule());

const key = { tonic: 'Bb', scale: 'major' } as const;

/** A line of triplets that wanders over the whole neck. */
function wander(instrument: Instrument, seed: number) {
  const random = seeded(seed);
  const notes = Array.from({ length: 48 }, (_, i) => {
    const place = { string: 1 + random.below(instrument.tuning.length), fret: random.below(13) };
    const midi = midiAt(instrument, place);
    const [at, length] = [beats(i, 3), beats(1, 3)];
    return { midi, name: spell(key, midi), at, length, place };
  });
  return { tempo: 120, notes };
}

/** What a MIDI file sounds: pitch and onset in beats. */
function heard(base64: string): [number, number][] {
  const file = parseMidi(Buffer.from(base64, 'base64'));
  return file.tracks.flatMap((track) => {
    let ticks = 0;
    return track.flatMap((event): [number, number][] => {
      ticks += event.deltaTime;
      if (event.type !== 'noteOn' || event.velocity === 0) return [];
      return [[event.noteNumber, ticks / (file.header.ticksPerBeat ?? NaN)]];
    });
  });
}

describe('tablature as an independent engraver sounds it', () => {
  it.each(INSTRUMENTS.map((instrument) => [instrument.name, instrument] as const))(
    'is the phrase, on %s',
    (_, instrument) => {
      const phrase = wander(instrument, 7);
      const xml = writeMusicXml(phrase, { title: 'Path', instrument, key, beatsPerBar: 4 });
      expect(toolkit.loadData(xml)).toBeTruthy();
      const sounded = heard(toolkit.renderToMIDI());
      expect(sounded.map(([midi]) => midi)).toEqual(phrase.notes.map(({ midi }) => midi));
      for (const [i, [, at]] of sounded.entries()) {
        expect(at).toBeCloseTo(toNumber(phrase.notes[i]!.at), 1);
      }
    },
  );
});
