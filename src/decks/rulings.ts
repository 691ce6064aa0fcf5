/**
 * What a teacher ruled of a phrase, as a deck document writes it, each ruling one text:
 *
 *     4-6 V7      notes 4 to 6 are one group and outline V7
 *     4-6         notes 4 to 6 are one group
 *     5 V7        the group that note 5 is in outlines V7
 *     5 passing   note 5 is a passing tone; likewise the other kinds of embellishing tone
 *     5 chordal   note 5 is one of its chord
 *
 * Notes are counted from 1, chords are named by their numeral and number.
 */
import { candidates, sameChord } from '../theory/analysis/candidates.ts';
import { EMBELLISHMENTS, type Embellishment } from '../theory/analysis/embellishmentNames.ts';
import { isToneRuling, spanOf, type Ruling } from '../theory/analysis/ruling.ts';
import type { Chord } from '../theory/chord.ts';
import { keyName, type Key } from '../theory/key.ts';
import { numeralLabel } from '../theory/naming.ts';
import type { Fault } from './envelope.ts';

const RULING = /^(?<from>\d{1,3})(?:[-–](?<to>\d{1,3}))?(?: (?<chord>\S+))?$/;

/** The rulings on a phrase of so many notes, or what is wrong with the first that cannot be. Inverts `writeRulings`. */
export function readRulings(texts: readonly string[], notes: number, key: Key): Ruling[] | Fault {
  const rulings: Ruling[] = [];
  for (const [i, text] of texts.entries()) {
    const ruling = readRuling(text, notes, key);
    if (typeof ruling === 'string') return { fault: `entry ${i + 1}, “${text}”: ${ruling}` };
    rulings.push(ruling);
  }
  const note = contradiction(rulings);
  if (note === null) return rulings;
  return { fault: `two entries contradict each other on note ${note + 1}: take one of them out` };
}

/** @throws RangeError for a chord that stands on no degree of the key */
export function writeRulings(rulings: readonly Ruling[], key: Key): string[] {
  return rulings.map((ruling) => {
    if (isToneRuling(ruling)) return `${ruling.note + 1} ${toneWord(ruling.embellishment)}`;
    const { chord } = ruling;
    if (chord && !candidates(key).some((one) => sameChord(one, chord))) {
      throw new RangeError(`${chord.symbol} is no chord of ${keyName(key)}: rule on another.`);
    }
    const [from, to] = spanOf(ruling);
    const notes = 'span' in ruling ? `${from + 1}-${to}` : `${to}`;
    return chord ? `${notes} ${numeralLabel(chord)}` : notes;
  });
}

function readRuling(text: string, notes: number, key: Key): Ruling | string {
  const parts = RULING.exec(text.trim().replace(/\s+/g, ' '))?.groups;
  if (!parts) return 'write the notes and the chord, like "4-6 V7"';
  const from = Number(parts.from);
  const to = Number(parts.to ?? parts.from);
  if (from < 1 || to < from || to > notes) {
    return `the phrase has notes 1 to ${notes}: write the first and the last of the group`;
  }
  if (parts.to === undefined) {
    const tone = TONES.find((one) => toneWord(one) === parts.chord);
    if (tone !== undefined) return { note: from - 1, embellishment: tone };
  }
  const chord = parts.chord === undefined ? null : readChord(parts.chord, key);
  if (parts.chord !== undefined && !chord) {
    const all = candidates(key).map(numeralLabel);
    return `${keyName(key)} has no chord ${parts.chord}: take one of ${all.join(', ')}`;
  }
  if (parts.to !== undefined) return { span: [from - 1, to], ...(chord && { chord }) };
  return chord ? { note: from - 1, chord } : 'say which chord, like "4 V7", or "4 passing"';
}

/** What a note can be ruled to be in its group. */
const TONES: readonly (Embellishment | null)[] = [...EMBELLISHMENTS, null];

function toneWord(tone: Embellishment | null): string {
  return tone === null ? 'chordal' : tone.replace(' ', '-');
}

/**
 * The chord that a numeral names in a key: triads, sevenths, ninths and elevenths, and in minor what harmonic minor lends. Inverts
 * `numeralLabel`; the marks of its quality may be left out, as long as the case is right: `vii7` for viiø7.
 */
export function readChord(text: string, key: Key): Chord | null {
  return byNumeral(key).get(text) ?? readUnmarked(text, key);
}

const known = new WeakMap<readonly Chord[], ReadonlyMap<string, Chord>>();

/** The chords of a key by their numerals. */
function byNumeral(key: Key): ReadonlyMap<string, Chord> {
  const all = candidates(key);
  let chords = known.get(all);
  if (!chords) {
    // Of two that are written alike the first.
    chords = new Map(all.toReversed().map((chord) => [numeralLabel(chord), chord]));
    known.set(all, chords);
  }
  return chords;
}

function readUnmarked(text: string, key: Key): Chord | null {
  const [, numeral, rest = ''] = /^([iv]+)(.*)$/i.exec(text) ?? [];
  if (!/^[°ø+]?(?:maj)?(?:\d|11)?(?:[b♭]9)?(?:[#♯]11)?$/.test(rest)) return null;
  const size = rest.includes('11')
    ? 'eleventh'
    : rest.includes('9')
      ? 'ninth'
      : rest.includes('7')
        ? 'seventh'
        : 'triad';
  const plain = (chord: Chord) => chord.numeral.replace(/[°ø+]$/, '');
  return candidates(key).find((chord) => chord.size === size && plain(chord) === numeral) ?? null;
}

/** The rulings as they stand in another key: of a chord that is none of that key, what notes it groups stays. */
export function rulingsIn(key: Key, rulings: readonly Ruling[]): Ruling[] {
  return rulings.flatMap((ruling): Ruling[] => {
    if (isToneRuling(ruling) || !ruling.chord) return [ruling];
    const { chord } = ruling;
    const own = candidates(key).find((one) => sameChord(one, chord));
    if (own) return [{ ...ruling, chord: own }];
    return 'span' in ruling ? [{ span: ruling.span }] : [];
  });
}

/** The first note, counted from 0, on which no reading can follow all rulings; null where one can. */
function contradiction(rulings: readonly Ruling[]): number | null {
  for (const ruling of rulings) {
    if (!('span' in ruling)) continue;
    const [from, to] = ruling.span;
    for (const other of rulings) {
      const [start, end] = spanOf(other);
      if (end <= from || to <= start) continue;
      if ('span' in other && (start !== from || end !== to)) return Math.max(from, start);
    }
  }
  // Those on the same group or the same note have to name the same chord.
  for (const ruling of rulings) {
    const [from, to] = spanOf(ruling);
    const [first, ...others] = rulings.filter((other) => {
      const [start, end] = spanOf(other);
      return other.chord && start < to && from < end;
    });
    const odd = others.find(({ chord }) => !sameChord(chord!, first!.chord!));
    if (odd) return Math.max(from, spanOf(odd)[0]);
  }
  return null;
}
