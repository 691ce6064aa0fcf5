/**
 * A phrase as MusicXML with tablature (MusicXML 4.0, W3C Music Notation Community Group): one part of one staff with a
 * line for each string, each note with its sounding pitch, its string and its fret. A note that rings on under the next
 * is written up to the next.
 */
import type { Instrument } from '../../neck/instrument.ts';
import { fifths, parsePitch } from '../../theory/note.ts';
import type { Key } from '../../theory/key.ts';
import type { Articulation, Phrase, PhraseNote } from '../../theory/phrase.ts';
import { add, beats, compare, toNumber } from '../../theory/rhythm.ts';
import type { Beats } from '../../theory/rhythm.ts';
import { parentKey } from '../../theory/scale.ts';
import { octaveOf } from '../notes.ts';
import { writtenFrom } from './values.ts';
import type { WrittenValue } from './values.ts';

/** What is written beside the notes. */
interface Sheet {
  readonly title: string;
  readonly instrument: Instrument;
  readonly key: Key;
  readonly beatsPerBar: number;
}

/** A written note with what it is part of; a rest where there is none. */
interface Sign extends WrittenValue {
  readonly note: PhraseNote | null;
  /** Whether it is tied to the one before, and to the one after. */
  readonly tiedFrom: boolean;
  readonly tiedTo: boolean;
  /** How it is reached, and how the next note is. */
  readonly articulation: Articulation | null;
  readonly nextArticulation: Articulation | null;
}

/**
 * The phrase as a MusicXML document.
 *
 * @throws RangeError where its times are too fine to be written as notes
 */
export function writeMusicXml(phrase: Phrase, sheet: Sheet): string {
  const signs = signsOf(phrase.notes, sheet.beatsPerBar);
  const divisions = signs.reduce((all, { length, at }) => common(common(all, length.d), at.d), 1);
  const bars = new Map<number, Sign[]>();
  for (const sign of signs) {
    const bar = Math.floor(toNumber(sign.at) / sheet.beatsPerBar);
    bars.set(bar, [...(bars.get(bar) ?? []), sign]);
  }
  const measures = Array.from(bars, ([bar, inBar]) => {
    const head = bar === 0 ? attributes(sheet, divisions) + tempoMark(phrase.tempo) : '';
    const notes = inBar.map((sign, i) => {
      const bracket = bracketOf(sign, inBar[i - 1], inBar[i + 1]);
      return noteElement(sign, bracket, divisions);
    });
    return `<measure number="${bar + 1}">${head}${notes.join('')}</measure>`;
  });
  const name = escape(sheet.instrument.name);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">',
    `<score-partwise version="4.0"><work><work-title>${escape(sheet.title)}</work-title></work>`,
    `<part-list><score-part id="P1"><part-name>${name}</part-name></score-part></part-list>`,
    '<part id="P1">',
    ...measures,
    '</part></score-partwise>\n',
  ].join('\n');
}

/** Every note and rest to be written, in order, the last bar filled up. */
function signsOf(notes: readonly PhraseNote[], beatsPerBar: number): Sign[] {
  const rest = {
    note: null,
    tiedFrom: false,
    tiedTo: false,
    articulation: null,
    nextArticulation: null,
  };
  const signs: Sign[] = [];
  const pause = (from: Beats, to: Beats) =>
    signs.push(...writtenFrom(from, to, beatsPerBar).map((written) => ({ ...written, ...rest })));
  let at = beats(0);
  for (const [i, note] of notes.entries()) {
    pause(at, note.at);
    const next = notes[i + 1];
    const end = add(note.at, note.length);
    at = next && compare(next.at, end) < 0 ? next.at : end;
    const written = writtenFrom(note.at, at, beatsPerBar);
    for (const [k, one] of written.entries()) {
      const [first, last] = [k === 0, k === written.length - 1];
      const [articulation, nextArticulation] = [
        first ? note.articulation : null,
        last ? next?.articulation : null,
      ];
      signs.push({
        ...one,
        note,
        tiedFrom: !first,
        tiedTo: !last,
        articulation: articulation ?? null,
        nextArticulation: nextArticulation ?? null,
      });
    }
  }
  pause(at, beats(Math.ceil(toNumber(at) / beatsPerBar) * beatsPerBar));
  return signs;
}

function attributes({ instrument, key, beatsPerBar }: Sheet, divisions: number): string {
  const strings = instrument.tuning.map((pitch, i) => {
    const { name, octave } = parsePitch(pitch)!;
    return `<staff-tuning line="${i + 1}">${pitchParts('tuning-', name, octave)}</staff-tuning>`;
  });
  const capo = instrument.capo > 0 ? `<capo>${instrument.capo}</capo>` : '';
  const parts = [
    `<divisions>${divisions}</divisions>`,
    `<key><fifths>${signature(key)}</fifths></key>`,
    `<time><beats>${beatsPerBar}</beats><beat-type>4</beat-type></time>`,
    '<clef><sign>TAB</sign></clef>',
    `<staff-details><staff-lines>${strings.length}</staff-lines>${strings.join('')}${capo}</staff-details>`,
  ];
  return `<attributes>${parts.join('')}</attributes>`;
}

function tempoMark(tempo: number): string {
  const mark = `<metronome><beat-unit>quarter</beat-unit><per-minute>${tempo}</per-minute></metronome>`;
  return `<direction placement="above"><direction-type>${mark}</direction-type><sound tempo="${tempo}"/></direction>`;
}

/** Sharps, or flats below 0, of the key signature: that of the major or minor scale nearest to the key's. */
function signature({ tonic, scale }: Key): number {
  const offsets: Partial<Record<Key['scale'], number>> = {
    major: 0,
    lydian: 1,
    mixolydian: -1,
    dorian: -2,
    minor: -3,
    'harmonic minor': -3,
    'melodic minor': -3,
    phrygian: -4,
    locrian: -5,
  };
  const sharps = fifths(tonic) + (offsets[parentKey({ tonic, scale }).scale] ?? 0);
  return Math.abs(sharps) <= 7 ? sharps : 0;
}

function noteElement(sign: Sign, bracket: string, divisions: number): string {
  const { note, length, value, dotted, tuplet } = sign;
  const ties =
    (sign.tiedFrom ? '<tie type="stop"/>' : '') + (sign.tiedTo ? '<tie type="start"/>' : '');
  const modified = tuplet
    ? `<time-modification><actual-notes>${tuplet.actual}</actual-notes><normal-notes>${tuplet.normal}</normal-notes></time-modification>`
    : '';
  return [
    '<note>',
    note ? `<pitch>${pitchParts('', note.name, octaveOf(note))}</pitch>` : '<rest/>',
    `<duration>${(length.n * divisions) / length.d}</duration>`,
    ties,
    `<voice>1</voice><type>${value}</type>${dotted ? '<dot/>' : ''}${modified}`,
    notations(sign, bracket),
    '</note>',
  ].join('');
}

/** The ends of a tuplet's bracket that are at a sign. A tuplet lies within one beat. */
function bracketOf(sign: Sign, before: Sign | undefined, after: Sign | undefined): string {
  if (!sign.tuplet) return '';
  const isWith = (other: Sign | undefined) =>
    other?.tuplet?.actual === sign.tuplet?.actual &&
    other !== undefined &&
    Math.floor(toNumber(other.at)) === Math.floor(toNumber(sign.at));
  return (
    (isWith(before) ? '' : '<tuplet type="start"/>') +
    (isWith(after) ? '' : '<tuplet type="stop"/>')
  );
}

function notations(
  { note, tiedFrom, tiedTo, articulation, nextArticulation }: Sign,
  bracket: string,
): string {
  const tied = (tiedFrom ? '<tied type="stop"/>' : '') + (tiedTo ? '<tied type="start"/>' : '');
  const slide =
    (articulation === 'slide' ? '<slide type="stop"/>' : '') +
    (nextArticulation === 'slide' ? '<slide type="start"/>' : '');
  const { place } = note ?? {};
  const where = place ? `<string>${place.string}</string><fret>${place.fret}</fret>` : '';
  const technical = hand(articulation, 'stop') + hand(nextArticulation, 'start') + where;
  const all = tied + bracket + slide + (technical ? `<technical>${technical}</technical>` : '');
  return all ? `<notations>${all}</notations>` : '';
}

function hand(articulation: Articulation | null, type: 'start' | 'stop'): string {
  return articulation && articulation !== 'slide' ? `<${articulation} type="${type}"/>` : '';
}

function pitchParts(prefix: string, name: string, octave: number): string {
  const alter = name.length === 1 ? 0 : name[1] === '#' ? name.length - 1 : 1 - name.length;
  const altered = alter === 0 ? '' : `<${prefix}alter>${alter}</${prefix}alter>`;
  return `<${prefix}step>${name[0]}</${prefix}step>${altered}<${prefix}octave>${octave}</${prefix}octave>`;
}

/** The least common multiple. */
function common(a: number, b: number): number {
  return a * beats(a, b).d;
}

function escape(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
