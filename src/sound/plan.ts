import type { Sound, Sounding } from './sounding.ts';
import type { Accent } from './click.ts';

/** Part of a phrase, in beats from its start: notes from `from` on that begin before `to`. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** What of a sounding is played, and how. */
export interface Arrangement {
  /** Only this part. */
  readonly stretch?: Stretch;
  /** Over and over; the length is rounded up to a whole beat, so that the click stays even. */
  readonly loop?: boolean;
  /** Arpeggio by arpeggio: the index of each one's first note. */
  readonly groups?: readonly number[];
  /** At least so many beats of rest after each group; the next begins on a beat. 1 where not given. */
  readonly rest?: number;
  /** Beats clicked before the first note; none where not given. */
  readonly countIn?: number;
  /** Beats in a bar, for the accent; 4 where not given. */
  readonly bar?: number;
  /** Clicks in a beat: quarters 1, eighths 2, triplets 3, sixteenths 4. 1 where not given. */
  readonly subdivision?: number;
  /** Instead of those clicks any others, in beats from the beginning of the count-in. */
  readonly clicks?: readonly Click[];
}

/** A string to be plucked, at a time in beats from the beginning of the count-in. */
export interface Pluck {
  readonly at: number;
  readonly midi: number;
  readonly strength: number;
  /** A string of the sounding, or below 0 one that stands in for a note that names none. */
  readonly string: number;
  readonly articulation?: Sound['articulation'];
  /** Which note of the sounding it is; a fret that a slide passes is none. */
  readonly index?: number;
}

/** A string to be silenced by the hand. */
interface Damping {
  readonly at: number;
  readonly string: number;
}

export interface Click {
  readonly at: number;
  readonly accent: Accent;
  /** Whether it belongs to the count-in, which is always heard. */
  readonly counted: boolean;
}

/** All that happens when a sounding is played, in beats from the beginning of the count-in. */
export interface Plan {
  readonly plucks: readonly Pluck[];
  readonly dampings: readonly Damping[];
  readonly clicks: readonly Click[];
  /** Where the first note stands and a loop comes back to. */
  readonly start: number;
  readonly end: number;
  readonly loop: boolean;
  /** Beats a minute, before the player's own slower or faster. */
  readonly tempo: number;
}

/** Two times in beats closer than this are the same: a hundredth of a millisecond at 60. */
const SAME = 1e-5;
/** Seconds that a slide takes at most, and strength of a note that is joined and not plucked. */
const SLIDE_SECONDS = 0.09;
const STRENGTH = 0.8;

/** A note of the sounding on the string that it is played on. */
interface StringNote extends Sound {
  readonly index: number;
  readonly string: number;
}

const endOf = (notes: readonly Sound[]): number =>
  notes.reduce((end, { at, length }) => Math.max(end, at + length), 0);

/** The notes in the order of their onsets, those without a string on one of their own where nothing else sounds. */
function onStrings(notes: readonly Sound[]): StringNote[] {
  const busy: number[] = [];
  return notes
    .map((note, index) => ({ ...note, index }))
    .toSorted((a, b) => a.at - b.at || a.index - b.index)
    .map((note) => {
      if (note.string !== undefined) return { ...note, string: note.string };
      const free = busy.findIndex((until) => until < note.at + SAME);
      const lane = free < 0 ? busy.length : free;
      busy[lane] = note.at + note.length;
      return { ...note, string: -1 - lane };
    });
}

/** The notes of the stretch, moved so that it begins at 0. */
function cut(notes: readonly StringNote[], stretch: Stretch | undefined): StringNote[] {
  if (!stretch) return [...notes];
  return notes
    .filter(({ at }) => at >= stretch.from - SAME && at < stretch.to - SAME)
    .map((note) => ({ ...note, at: note.at - stretch.from }));
}

/** Sets the groups apart: each begins on the first whole beat that leaves the rest. */
function setApart(
  notes: readonly StringNote[],
  groups: readonly number[],
  rest: number,
): StringNote[] {
  const apart: StringNote[] = [];
  const groupOf = (index: number) => groups.filter((first) => first <= index).length;
  let [group, shift] = [-1, 0];
  for (const note of notes) {
    if (groupOf(note.index) !== group && apart.length > 0) {
      shift = Math.ceil(endOf(apart) + rest - SAME) - note.at;
    }
    group = groupOf(note.index);
    apart.push({ ...note, at: note.at + shift });
  }
  return apart;
}

/** The note before (−1) or after (1) on the same string. */
function neighbour(
  notes: readonly StringNote[],
  place: number,
  step: 1 | -1,
): StringNote | undefined {
  const { string } = notes[place]!;
  for (let i = place + step; notes[i]; i += step) if (notes[i]!.string === string) return notes[i];
  return undefined;
}

/** A note's pluck, and before it the frets that a slide passes on its way. */
function plucksOf(notes: readonly StringNote[], place: number, tempo: number): Pluck[] {
  const { at, midi, index, string, strength = STRENGTH, articulation } = notes[place]!;
  const before = neighbour(notes, place, -1);
  // Joined to nothing, it can only be plucked.
  if (!articulation || !before) return [{ at, midi, strength, index, string }];
  const target: Pluck = { at, midi, strength, index, string, articulation };
  if (articulation !== 'slide') return [target];
  const frets = Math.abs(midi - before.midi);
  const glide = Math.min((at - before.at) / 2, (SLIDE_SECONDS * tempo) / 60);
  const passed = Array.from({ length: Math.max(0, frets - 1) }, (_, k) => ({
    at: at - (glide * (frets - 1 - k)) / frets,
    midi: before.midi + (k + 1) * Math.sign(midi - before.midi),
    strength,
    string,
    articulation,
  }));
  return [...passed, target];
}

/** Where the hand ends notes: at their length, unless the next on the string does it or the phrase ends with them. */
function dampingsOf(notes: readonly StringNote[], end: number, loop: boolean): Damping[] {
  return notes.flatMap((note, place) => {
    const at = note.at + note.length;
    const next = neighbour(notes, place, 1);
    const ringsOut = !loop && at > end - SAME;
    return ringsOut || (next && next.at < at + SAME) ? [] : [{ at, string: note.string }];
  });
}

/** The clicks of the count-in and of all that follows. */
function clicksOf(start: number, end: number, bar: number, subdivision: number): Click[] {
  const count = Math.ceil((end - start - SAME) * subdivision);
  const counted = Array.from({ length: start }, (_, beat) => ({
    at: beat,
    accent: beat % bar === 0 ? ('bar' as const) : ('beat' as const),
    counted: true,
  }));
  const following = Array.from({ length: count }, (_, n) => ({
    at: start + n / subdivision,
    accent:
      n % (bar * subdivision) === 0
        ? ('bar' as const)
        : n % subdivision === 0
          ? ('beat' as const)
          : ('between' as const),
    counted: false,
  }));
  return [...counted, ...following];
}

/** Lays out a sounding in time: which string is plucked, damped and clicked when. */
export function planOf(sounding: Sounding, arrangement: Arrangement = {}): Plan {
  const { stretch, groups, rest = 1, countIn = 0, bar = 4, subdivision = 1 } = arrangement;
  const loop = arrangement.loop ?? false;
  const all = onStrings(sounding.notes);
  const chosen = cut(all, stretch);
  const apart = groups ? setApart(chosen, groups, rest) : chosen;
  const sounded = Math.max(endOf(apart), stretch && !groups ? stretch.to - stretch.from : 0);
  const start = Math.max(0, Math.round(countIn));
  // The rest after the last group belongs to the loop, or its last arpeggio would run into the first.
  const length = loop ? Math.ceil(sounded + (groups ? rest : 0) - SAME) : sounded;
  const notes = apart.map((note) => ({ ...note, at: note.at + start }));
  const end = start + length;
  return {
    plucks: notes.flatMap((_, place) => plucksOf(notes, place, sounding.tempo)),
    dampings: dampingsOf(notes, end, loop),
    clicks: arrangement.clicks ?? clicksOf(start, end, bar, subdivision),
    start,
    end,
    loop,
    tempo: sounding.tempo,
  };
}
