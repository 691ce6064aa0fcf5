import { listed } from '../../cards/arpeggio.ts';
import { travel } from '../../neck/travel.ts';
import { SURE, type Group } from '../../theory/analysis/analysis.ts';
import { motion } from '../../theory/analysis/motion.ts';
import type { Chord } from '../../theory/chord.ts';
import { chordLabel, keyLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { withPlaces, type Explained } from './explained.ts';

/** How much is said beside the numerals. */
export interface Said {
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

/** `ii7 (Cm7)`, or where that is not sure `IV (E♭) or ii7 (Cm7)`. */
export function groupWords({ chord, confidence, alternatives }: Group, said: Said): string {
  const other = confidence < SURE ? alternatives[0] : undefined;
  const first = chordWords(chord, said);
  return other ? `${first} or ${chordWords(other.chord, said)}` : first;
}

/** `ii7 V7 Imaj7`: a phrase named by the arpeggios it goes through. */
export function pathWords({ analysis }: Explained): string {
  return analysis.groups.map(({ chord }) => numeralLabel(chord)).join(' ');
}

/** `It outlines ii7 (Cm7), then V7 (F7).` */
export function outlineWords({ analysis }: Explained, said: Said): string {
  return `It outlines ${analysis.groups.map((group) => groupWords(group, said)).join(', then ')}.`;
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
      ? `Note ${notes[0]} is ${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}.`
      : `Notes ${listed(notes.map(String))} are ${kind}s.`,
  );
  return told.length === 0 ? null : told.join(' ');
}

function kindWords(embellishment: string): string {
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
  const counted = (count: number, one: string) => `${count} ${count === 1 ? one : `${one}s`}`;
  const moves = [counted(leaps, 'leap'), counted(steps, 'step')];
  if (repeats > 0) moves.push(counted(repeats, 'repeated note'));
  return `${listed(moves)}.`;
}

/** `Frets 1 to 6, 14 cm along the neck, on 4 strings; the hand shifts at note 7.`; null where a note has no place. */
export function travelWords(explained: Explained): string | null {
  const way = travel(withPlaces(explained), explained.instrument);
  if (!way) return null;
  const [low, high] = way.frets;
  const frets =
    high === 0 ? 'Open strings only' : low === high ? `Fret ${low}` : `Frets ${low} to ${high}`;
  const reach = way.reach === 0 ? '' : `, ${Math.round(way.reach / 10)} cm along the neck`;
  const strings = `, on ${way.strings} ${way.strings === 1 ? 'string' : 'strings'}`;
  const { shifts } = explained;
  const at = listed(shifts.map((note) => String(note + 1)));
  const hand =
    shifts.length === 0
      ? explained.fault
        ? ''
        : '; the hand stays where it is'
      : `; the hand shifts at ${shifts.length === 1 ? 'note' : 'notes'} ${at}`;
  return `${frets}${reach}${strings}${hand}.`;
}
