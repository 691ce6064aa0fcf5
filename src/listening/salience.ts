/**
 * How well each semitone explains what is new: a harmonic template after Klapuri (ISMIR 2006), with the stretched
 * partials of a stiff string (Fletcher 1964).
 */
import { frequency } from '../theory/note.ts';
import type { Fresh } from './fresh.ts';

export const LOWEST_HEARD = 34;
export const HIGHEST_HEARD = 90;
export const HEARD = HIGHEST_HEARD - LOWEST_HEARD + 1;

/** Inharmonicity of a middling string. */
const STIFFNESS = 7e-5;
const PARTIALS = 16;
/** So many of the first partials a note should have. */
const FIRST = 6;
/** Cents by which a partial may be off. */
const WIDTH = 28;
const HIGHEST_PARTIAL = 5000;
/** Loud partials count less than their amplitude, and one is found when it has this part of the loudest. */
const COMPRESSION = 0.7;
const PRESENT = 0.02;
const FOUND = 0.6;

/** What the partials of a note have of what is new. */
export interface Salience {
  /** Share of what is new that it explains times the share of its first partials that are found, 0 to 1. */
  salience: number;
  /** Share of its first partials that are found, 0 to 1. */
  found: number;
  /** Amplitude of what is new of its partials, and of the odd ones, which no note an octave above it has. */
  fresh: number;
  odd: number;
  /** Share of what is new that its partials are, and that the odd ones are, 0 to 1. */
  share: number;
  oddShare: number;
  /** How much of its partials is new, 0 to 1. */
  newly: number;
  /** How much louder than before its odd partials are, nepers within `GROWN`; those of an octave that rings do not grow. */
  oddGrown: number;
}

/**
 * The salience of each MIDI number from `LOWEST_HEARD` to `HIGHEST_HEARD`.
 * @param reference A4 in Hz, as the guitar is tuned
 */
export function saliencesOf(partials: readonly Fresh[], reference: number): Salience[] {
  const weights = partials.map(({ fresh }) => fresh ** COMPRESSION);
  const total = weights.reduce((sum, weight) => sum + weight, 1e-9);
  const most = partials.reduce((top, { fresh }) => Math.max(top, fresh), 1e-9);
  return Array.from({ length: HEARD }, (_, i) =>
    salienceOf(partials, weights, total, most, frequency(LOWEST_HEARD + i, reference)),
  );
}

/** So much of a partial stays when its note is taken out: another note may share it. */
const SHARED = 0.15;

/** What is new without a note: its partials are as good as gone. */
export function withoutNote(partials: readonly Fresh[], midi: number, reference: number): Fresh[] {
  const hertz = frequency(midi, reference);
  return partials.map((partial) => {
    const h = Math.max(1, Math.round(partial.hertz / hertz));
    const at = h * hertz * Math.sqrt((1 + STIFFNESS * h * h) / (1 + STIFFNESS));
    const own = partial.hertz > at * LOW && partial.hertz < at * HIGH;
    return own ? { ...partial, fresh: SHARED * partial.fresh } : partial;
  });
}

const LOW = 2 ** (-WIDTH / 1200);
const HIGH = 2 ** (WIDTH / 1200);

function salienceOf(
  partials: readonly Fresh[],
  weights: readonly number[],
  total: number,
  most: number,
  hertz: number,
): Salience {
  let [share, oddShare, found, could, fresh, odd, sounding, i] = [0, 0, 0, 0, 0, 0, 1e-9, 0];
  let [grown, oddSounding] = [0, 1e-9];
  for (let h = 1; h <= PARTIALS; h++) {
    const at = h * hertz * Math.sqrt((1 + STIFFNESS * h * h) / (1 + STIFFNESS));
    if (at > HIGHEST_PARTIAL) break;
    while (i < partials.length && partials[i]!.hertz < at * LOW) i++;
    let best = -1;
    for (let k = i; k < partials.length && partials[k]!.hertz <= at * HIGH; k++) {
      if (best < 0 || weights[k]! > weights[best]!) best = k;
    }
    if (h <= FIRST) could++;
    if (best < 0) continue;
    const partial = partials[best]!;
    const isOdd = h % 2;
    share += weights[best]! / total;
    oddShare += (isOdd * weights[best]!) / total;
    fresh += partial.fresh ** 2;
    odd += isOdd * partial.fresh ** 2;
    const loud = Math.max(partial.level, partial.before) ** COMPRESSION;
    sounding += loud;
    oddSounding += isOdd * loud;
    grown += isOdd * loud * growth(partial, GROWN.little * most);
    if (h <= FIRST) found += Math.min(1, partial.fresh / (PRESENT * most));
  }
  return {
    salience: share * (found / could) ** FOUND,
    found: found / could,
    fresh: Math.sqrt(fresh),
    odd: Math.sqrt(odd),
    share,
    oddShare,
    newly: (share * total) / sounding,
    oddGrown: grown / oddSounding,
  };
}

/** Growth is told above a part of what is newest, and as far as it says anything. */
const GROWN = { little: 0.01, least: -1, most: 1.5 };

function growth({ level, before }: Fresh, little: number): number {
  const grown = Math.log((level + little) / (before + little));
  return Math.max(GROWN.least, Math.min(GROWN.most, grown));
}
