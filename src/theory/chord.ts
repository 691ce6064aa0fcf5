import { distance } from './interval.ts';
import { keyName, type Key } from './key.ts';
import { chroma, pitchClass, type NoteName } from './note.ts';
import { degreeOfStep, hasSevenNotes, scaleNotes } from './scale.ts';

/** How many thirds are stacked. */
export type Size = 'triad' | 'seventh' | 'ninth' | 'eleventh' | 'thirteenth';

export const SIZES: readonly Size[] = ['triad', 'seventh', 'ninth', 'eleventh', 'thirteenth'];

/** A chord member's number: the root is 1, the third 3, … */
export type Member = 1 | 3 | 5 | 7 | 9 | 11 | 13;

const MEMBERS: readonly Member[] = [1, 3, 5, 7, 9, 11, 13];

/** What kind of chord it is, whatever its root. */
export interface Quality {
  readonly triad: 'major' | 'minor' | 'diminished' | 'augmented';
  readonly seventh: 'major' | 'minor' | 'diminished' | null;
  /** The number that the symbol bears: the highest unaltered of 7, 9, 11, 13; null for triads. */
  readonly number: 7 | 9 | 11 | 13 | null;
  /** Members beyond the seventh that are not a major ninth, perfect eleventh or major thirteenth: `b9`, `#11`. */
  readonly altered: readonly string[];
}

/** The chord that stands on a degree of a key, thirds stacked from the scale and spelled by letter. */
export interface Chord {
  readonly key: Key;
  /** 1 to 7. */
  readonly degree: number;
  readonly size: Size;
  readonly root: NoteName;
  /** Root first, in thirds. */
  readonly notes: readonly NoteName[];
  /** The members that `notes` are, in the same order. */
  readonly members: readonly Member[];
  readonly quality: Quality;
  /** As the trade writes it, in ASCII: `Bb`, `Cm7`, `F7`, `Am7b5`, `Ebmaj9`. */
  readonly symbol: string;
  /** Case and quality mark, without the size: `I`, `ii`, `vii°`, `III+`, `viiø` for sevenths. */
  readonly numeral: string;
}

/** How many notes a chord of this size has: 3 to 7. */
export function memberCount(size: Size): number {
  return SIZES.indexOf(size) + 3;
}

const known = new Map<string, Chord>();

/**
 * The chord on a degree (1 to 7) of a key.
 * @throws RangeError where the scale has not seven notes or the degree is none.
 */
export function chordOn(key: Key, degree: number, size: Size): Chord {
  const id = `${keyName(key)} ${degree} ${size}`;
  let chord = known.get(id);
  if (!chord) {
    chord = stack(key, degree, size);
    known.set(id, chord);
  }
  return chord;
}

function stack(key: Key, degree: number, size: Size): Chord {
  if (!hasSevenNotes(key.scale))
    throw new RangeError(
      `No chords are stacked on the ${key.scale} scale: it has not seven notes.`,
    );
  if (!Number.isInteger(degree) || degree < 1 || degree > 7)
    throw new RangeError(`${degree} is not a degree: take 1 to 7.`);
  const scale = scaleNotes(key);
  const members = MEMBERS.slice(0, memberCount(size));
  const notes = members.map((member) => scale[degreeOfStep(degree + member - 2) - 1]!);
  const root = notes[0]!;
  const quality = qualityOf(notes);
  return {
    key,
    degree,
    size,
    root,
    notes,
    members,
    quality,
    symbol: root + suffix(quality),
    numeral: numeralOf(degree, quality),
  };
}

const TRIADS: Readonly<Record<string, Quality['triad']>> = {
  '3M 5P': 'major',
  '3m 5P': 'minor',
  '3m 5d': 'diminished',
  '3M 5A': 'augmented',
};
const SEVENTHS: Readonly<Record<string, Quality['seventh']>> = {
  '7M': 'major',
  '7m': 'minor',
  '7d': 'diminished',
};
/** Unaltered ninth, eleventh, thirteenth, as intervals within the octave. */
const PLAIN = ['2M', '4P', '6M'];
const SIGNS: Readonly<Record<string, string>> = { A: '#', m: 'b', d: 'b' };

/** The scales of `scale.ts` yield these four triads and three sevenths and no others (tested). */
function qualityOf(notes: readonly NoteName[]): Quality {
  const [third, fifth, seventh, ...beyond] = notes
    .slice(1)
    .map((note) => distance(notes[0]!, note));
  let number: Quality['number'] = seventh ? 7 : null;
  const altered: string[] = [];
  beyond.forEach((interval, i) => {
    const member = MEMBERS[i + 4] as 9 | 11 | 13;
    if (interval === PLAIN[i]) number = member;
    // A diminished fourth is one semitone below a perfect one; no scale here has a diminished sixth above a root.
    else altered.push(`${SIGNS[interval.slice(1)]!}${member}`);
  });
  return {
    triad: TRIADS[`${third} ${fifth}`]!,
    seventh: seventh ? SEVENTHS[seventh]! : null,
    number,
    altered,
  };
}

function suffix({ triad, seventh, number, altered }: Quality): string {
  const rest = `${number ?? ''}${triad === 'diminished' && seventh === 'minor' ? 'b5' : ''}${triad === 'augmented' && seventh ? '#5' : ''}${altered.join('')}`;
  if (!seventh) return { major: '', minor: 'm', diminished: 'dim', augmented: 'aug' }[triad];
  if (seventh === 'diminished') return `dim${rest}`;
  const minor = triad === 'minor' || triad === 'diminished';
  if (seventh === 'major') return `${minor ? 'mMaj' : 'maj'}${rest}`;
  return `${minor ? 'm' : ''}${rest}`;
}

const NUMERALS = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];

/**
 * Upper case major or augmented, lower case minor or diminished, ° diminished, ø half-diminished, + augmented.
 * Degrees are counted along the key's own scale: III in minor, not ♭III.
 */
function numeralOf(degree: number, { triad, seventh }: Quality): string {
  const roman = NUMERALS[degree - 1]!;
  if (triad === 'major') return roman;
  if (triad === 'augmented') return `${roman}+`;
  if (triad === 'minor') return roman.toLowerCase();
  return `${roman.toLowerCase()}${seventh === 'minor' ? 'ø' : '°'}`;
}

/**
 * The degrees of the key whose chord of this size has the same notes: one, unless the notes alone do not tell it, as
 * those of a thirteenth, which is the whole scale.
 */
export function degreesAlike({ key, notes, size }: Chord): number[] {
  return scaleNotes(key).flatMap((_, i) => {
    const other = chordOn(key, i + 1, size);
    return other.notes.every((note) => notes.includes(note)) ? [i + 1] : [];
  });
}

/** The notes that two chords of a key have in common, in the first one's order. */
export function sharedNotes(a: Chord, b: Chord): NoteName[] {
  return a.notes.filter((note) => b.notes.includes(note));
}

/** Which member of a chord a pitch (MIDI number or pitch class) is, or null where it is none. */
export function memberOf(chord: Chord, pitch: number): Member | null {
  let members = membersByPitch.get(chord);
  if (!members) {
    const chromas = chord.notes.map(chroma);
    members = Array.from({ length: 12 }, (_, of) => chord.members[chromas.indexOf(of)] ?? null);
    membersByPitch.set(chord, members);
  }
  return members[pitchClass(pitch)]!;
}

const membersByPitch = new WeakMap<Chord, readonly (Member | null)[]>();
