/** What is said of a line that was played. */
import { listed } from '../../parts/english.ts';
import { type Key } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import { noteLabel, type Naming } from '../../theory/naming.ts';
import { pitchClass } from '../../theory/note.ts';
import { ALLOWED } from '../../theory/timing/judge.ts';
import { heardOf, type PlayedAnswer } from './answer.ts';
import type { PlayingCard } from './card.ts';
import type { Time } from './timing.ts';

/** How a pitch is named beside another: `A`, or `B♭ an octave too high`. */
export function heardLabel(midi: number, asked: number, key: Key, naming: Naming): string {
  const name = noteLabel(spell(key, midi), naming, key);
  const octaves = (midi - asked) / 12;
  return octaves === 0 || !Number.isInteger(octaves) ? name : `${name} ${octavesLabel(octaves)}`;
}

/** `an octave too high`, `2 octaves too low`. */
function octavesLabel(octaves: number): string {
  const many = Math.abs(octaves) === 1 ? 'an octave' : `${Math.abs(octaves)} octaves`;
  return `${many} too ${octaves > 0 ? 'high' : 'low'}`;
}

/** So many faults are told one by one. */
const TOLD = 3;

/** A few words and a sentence on a line that was not right. */
export function faultWords(
  { key, notes }: PlayingCard,
  { notes: heard }: PlayedAnswer,
  naming: Naming,
): { readonly title: string; readonly sentence: string } {
  const whole = wholeOctaves(notes, heard);
  if (whole !== 0) {
    const many = octavesLabel(whole);
    return { title: many[0]!.toUpperCase() + many.slice(1), sentence: `All of it was ${many}.` };
  }
  const label = (i: number) => noteLabel(notes[i]!.name, naming, key);
  const faults = notes.flatMap(({ midi }, i) => {
    const note = heard[i];
    const is = heardOf(note, midi);
    if (is === 'missing') return [{ brief: `${label(i)} was missing`, i, was: 'was missing' }];
    if (is !== 'wrong' || note?.is !== 'heard') return [];
    const other = heardLabel(note.midi, midi, key, naming);
    const same = pitchClass(note.midi - midi) === 0;
    const instead = same ? other : `${other}, not ${label(i)}`;
    return [{ brief: instead, i, was: `was ${instead}` }];
  });
  if (faults.length === 0) {
    const names = notes.map((_, i) => label(i)).join(' ');
    return { title: 'Not yet', sentence: `It goes ${names}.` };
  }
  const right = notes.filter(({ midi }, i) => heardOf(heard[i], midi) === 'right').length;
  const told = faults.slice(0, TOLD).map(({ i, was }) => `note ${i + 1} ${was}`);
  const more = faults.length - told.length;
  const sentence = `${told.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
  return {
    title: faults.length === 1 ? faults[0]!.brief : `${right} of ${notes.length} notes right`,
    sentence: sentence[0]!.toUpperCase() + sentence.slice(1),
  };
}

/** By how many octaves all of it was off, 0 where it was not, or not all of it alike. */
function wholeOctaves(notes: PlayingCard['notes'], heard: PlayedAnswer['notes']): number {
  const off = notes.map(({ midi }, i) => {
    const note = heard[i];
    return note?.is === 'heard' ? (note.midi - midi) / 12 : NaN;
  });
  const [first = 0] = off;
  return Number.isInteger(first) && off.every((one) => one === first) ? first : 0;
}

/** What was heard beside what was asked: `Beside them E was heard.`; empty where nothing was. */
export function extraWords({ key }: PlayingCard, { extras }: PlayedAnswer, naming: Naming): string {
  if (extras.length === 0) return '';
  const names = [...new Set(extras.map(({ midi }) => noteLabel(spell(key, midi), naming, key)))];
  return `Beside them ${listed(names)} ${names.length > 1 ? 'were' : 'was'} heard.`;
}

/** By how much of it a tempo may be off before it is told. */
const TEMPO_TOLD = 0.08;

/** How even it was, and at which tempo; `fraction` is of a step from note to note. */
export function timeWords({ tempo }: PlayingCard, time: Time): string {
  const late = time.late.map((note) => `${note + 1}`);
  const lateNotes =
    late.length > 1 ? `Notes ${listed(late)} came late.` : `Note ${late[0]} came late.`;
  return [
    evenWords(time),
    late.length > 0 ? lateNotes : '',
    Math.abs(time.tempo! / tempo! - 1) > TEMPO_TOLD
      ? `You played at about ${Math.round(time.tempo!)}, asked was ${tempo}.`
      : '',
  ]
    .filter((words) => words !== '')
    .join(' ');
}

function evenWords({ verdict, evenness }: Time): string {
  if (!evenness || !verdict) return '';
  const { fraction } = evenness;
  if (fraction === null) return 'As even as can be heard.';
  const percent = `${Math.round(100 * fraction)} % of a step`;
  if (verdict === 'wrong') return `Uneven: ${percent}, where ${100 * ALLOWED[0]} % is even.`;
  return verdict === 'right' ? `Even: ${percent}.` : `${percent} uneven; more notes would tell.`;
}
