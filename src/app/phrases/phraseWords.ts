import { listed } from '../../parts/english.ts';
import { withPlaces, type Explained } from '../../making/explained.ts';
import { likeliestOther, type OtherReading } from '../../making/otherReadings.ts';
import { travel } from '../../neck/travel.ts';
import { SURE_READING, type Group } from '../../theory/analysis/analysis.ts';
import { motion } from '../../theory/analysis/motion.ts';
import type { Chord } from '../../theory/chord.ts';
import {
  chordLabel,
  keyLabel,
  MEMBER_NAMES,
  numeralLabel,
  type Naming,
} from '../../theory/naming.ts';
import { counted } from '../figures.ts';

/** How much is said beside the numerals. */
interface Said {
  readonly naming: Naming;
  /** Chord names beside the numerals. */
  readonly chordNames: boolean;
}

/** `ii7`, `ii7 (Cm7)`. */
export function chordWords(chord: Chord, { naming, chordNames }: Said): string {
  const numeral = numeralLabel(chord);
  const name = chordLabel(chord, naming);
  return chordNames && name !== numeral ? `${numeral} (${name})` : numeral;
}

/** `V9 (F9)`, `V9 (F9) with the next`, `V9 (F9) of notes 4 to 9`. */
export function readingWords(
  { chord, joins, span }: Pick<OtherReading, 'chord' | 'joins' | 'span'>,
  said: Said,
): string {
  const words = chordWords(chord, said);
  if (joins === 'other notes') return `${words} of ${notesWords(span)}`;
  return joins ? `${words} with ${joins}` : words;
}

/** `note 6`, `notes 1 to 6`: `from` up to and not including `to`. */
export function notesWords([from, to]: readonly [from: number, to: number]): string {
  return to - from === 1 ? `note ${to}` : `notes ${from + 1} to ${to}`;
}

/** `ii7 (Cm7)`, or where that is not sure `IV (E♭) or ii7 (Cm7)`, `IV (E♭) of notes 4 to 6 or notes 3 to 6`. */
function groupWords({ chord, from, to }: Group, other: OtherReading | null, said: Said): string {
  const first = chordWords(chord, said);
  if (!other) return first;
  const words = readingWords(other, said);
  return words.startsWith(`${first} of `)
    ? `${first} of ${notesWords([from, to])} or ${notesWords(other.span)}`
    : `${first} or ${words}`;
}

/** What else the groups that are not sure may be; what is the same for several is told of the last. */
function othersTold(groups: readonly Group[]): (OtherReading | null)[] {
  const others = groups.map(({ confidence }, at) =>
    confidence < SURE_READING ? likeliestOther(groups, at) : null,
  );
  const spans = others.map((other) => other?.span.join());
  return others.map((other, at) => (spans.lastIndexOf(spans[at]) === at ? other : null));
}

/** `ii7 V7 Imaj7`: a phrase named by the arpeggios it goes through. */
export function pathWords({ analysis }: Explained): string {
  return analysis.groups.map(({ chord }) => numeralLabel(chord)).join(' ');
}

/** `It outlines ii7 (Cm7), then V7 (F7).` */
export function outlineWords({ analysis }: Explained, said: Said): string {
  const { groups } = analysis;
  const others = othersTold(groups);
  return `It outlines ${groups.map((group, at) => groupWords(group, others[at]!, said)).join(', then ')}.`;
}

/** `Note 5 is a passing tone.`; null where every note is of its arpeggio. Foreign notes are told as such. */
export function embellishmentWords({ analysis }: Explained): string | null {
  const kinds = new Map<string, number[]>();
  for (const [i, { member, embellishment }] of analysis.notes.entries()) {
    if (member !== null) continue;
    const kind = embellishment === null ? 'foreign note' : kindWords(embellishment);
    kinds.set(kind, [...(kinds.get(kind) ?? []), i + 1]);
  }
  const told = Array.from(kinds, ([kind, notes]) =>
    notes.length === 1
      ? `Note ${notes[0]} is ${withArticle(kind)}.`
      : `Notes ${listed(notes.map(String))} are ${kind}s.`,
  );
  return told.length === 0 ? null : told.join(' ');
}

/** `passing tone`. */
export function kindWords(embellishment: string): string {
  const alone = ['appoggiatura', 'anticipation', 'suspension'].includes(embellishment);
  return alone ? embellishment : `${embellishment} tone`;
}

/** `B♭ major · guitar · ♩ = 72`: what a printed sheet says over the neck. */
export function sheetWords({ key, instrument, phrase }: Explained, naming: Naming): string {
  return `${keyLabel(key, naming)} · ${instrument.name} · ♩ = ${phrase.tempo}`;
}

/** `9 leaps and 2 steps.`, and how far that is along the neck. */
export function motionWords(explained: Explained): string {
  const { leaps, steps, repeats } = motion(explained.phrase, explained.key);
  const moves = [counted(leaps, 'leap'), counted(steps, 'step')];
  if (repeats > 0) moves.push(counted(repeats, 'repeated note'));
  return `${listed(moves)}.`;
}

/**
 * `Frets 1 to 6, 14 cm along the neck, on 4 strings; the hand shifts at note 7 and stretches at note 9.`; null where a
 * note has no place.
 */
export function travelWords(explained: Explained): string | null {
  const way = travel(withPlaces(explained), explained.instrument);
  if (!way) return null;
  const [low, high] = way.frets;
  const frets =
    high === 0 ? 'Open strings only' : low === high ? `Fret ${low}` : `Frets ${low} to ${high}`;
  const reach = way.reach === 0 ? '' : `, ${Math.round(way.reach / 10)} cm along the neck`;
  const strings = `, on ${counted(way.strings, 'string')}`;
  return `${frets}${reach}${strings}${explained.fault ? '' : `; the hand ${handWords(explained)}`}.`;
}

function handWords({ shifts, stretches }: Explained): string {
  const at = (notes: readonly number[]) =>
    `${notes.length === 1 ? 'note' : 'notes'} ${listed(notes.map((note) => String(note + 1)))}`;
  const moves = shifts.length === 0 ? 'stays where it is' : `shifts at ${at(shifts)}`;
  return stretches.length === 0 ? moves : `${moves} and stretches at ${at(stretches)}`;
}

/** `the third of ii7`, `a passing tone`, `a foreign note`: what a note is in its arpeggio. */
export function toneWords({ analysis }: Explained, note: number): string {
  const { member, embellishment } = analysis.notes[note]!;
  const { chord } = analysis.groups.find(({ from, to }) => from <= note && note < to)!;
  if (member !== null) return `the ${MEMBER_NAMES[member]} of ${numeralLabel(chord)}`;
  return embellishment === null ? 'a foreign note' : withArticle(kindWords(embellishment));
}

/** `an escape tone`. */
export function withArticle(words: string): string {
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}
