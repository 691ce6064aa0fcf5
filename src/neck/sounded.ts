import { fretsLeft, openMidi, type Instrument } from './instrument.ts';

/** On how many strings a pitch, MIDI, lies, open or fretted. */
export function stringsSounding(instrument: Instrument, midi: number): number {
  const highest = fretsLeft(instrument);
  return openMidi(instrument).filter((open) => midi >= open && midi <= open + highest).length;
}

/** Whether any string has a pitch, MIDI, open or fretted. */
export function isSounded(instrument: Instrument, midi: number): boolean {
  return stringsSounding(instrument, midi) > 0;
}
