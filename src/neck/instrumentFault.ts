import { midiOf, parsePitch } from '../theory/note.ts';
import { GUITAR, type Instrument, INSTRUMENTS } from './instrument.ts';

/** The instrument that an id names, or null. Inverts `instrumentId`, with a guitar's frets and length where unlisted. */
export function instrumentFromId(id: string): Instrument | null {
  const [word = '', capoText = '0', ...more] = id.split('+');
  if (more.length > 0 || !/^\d{1,2}$/.test(capoText)) return null;
  const known = INSTRUMENTS.find((other) => other.name.replaceAll(' ', '-') === word);
  const base = known ?? { ...GUITAR, name: 'own tuning', tuning: word.split('.') };
  const instrument = { ...base, capo: Number(capoText) };
  return instrumentFault(instrument) ? null : instrument;
}

const LOWEST = 21;
const HIGHEST = 79;

/** `, not 30`; nothing where no number was written. */
const butNot = (value: number) => (Number.isNaN(value) ? '' : `, not ${value}`);

/** What makes no sense about an instrument, as a sentence that names the string at fault; null where nothing does. */
export function instrumentFault(instrument: Instrument): string | null {
  const { tuning, frets, scaleLength, capo } = instrument;
  if (tuning.length < 4 || tuning.length > 9)
    return `The tuning has ${tuning.length} ${tuning.length === 1 ? 'string' : 'strings'}: it takes 4 to 9, with a space between.`;
  const strings = tuning.map((text, i) => ({ text, number: tuning.length - i }));
  for (const { text, number } of strings) {
    const pitch = parsePitch(text);
    if (!pitch)
      return `String ${number} is tuned to “${text}”: write a note with its octave, like A2 or Bb3.`;
    if (pitch.midi < LOWEST || pitch.midi > HIGHEST)
      return `String ${number} is tuned to ${text}, which no string sounds: take A0 to G5.`;
  }
  for (const [i, { text, number }] of strings.entries()) {
    const below = strings[i - 1];
    if (below && Math.abs(midiOf(text) - midiOf(below.text)) > 12)
      return `String ${number} (${text}) is more than an octave away from string ${below.number} (${below.text}): check its octave.`;
  }
  if (!Number.isInteger(frets) || frets < 12 || frets > 27)
    return `The neck takes 12 to 27 frets${butNot(frets)}.`;
  if (!(scaleLength >= 250 && scaleLength <= 1000))
    return `The scale length takes 250 to 1000 mm${butNot(scaleLength)}.`;
  if (!Number.isInteger(capo) || capo < 0 || capo > 11)
    return `The capo takes frets 0 (none) to 11${butNot(capo)}.`;
  return null;
}
