import type { PhraseNote } from '../phrase.ts';
import { add, beats, compare, subtract, toNumber, type Beats } from '../rhythm.ts';
import { type FigureName, FIGURES } from './figureNames.ts';

/** A rhythm to be kept even: whole bars of onsets, as often as a card needs them. */
export interface Figure {
  /** Notes to a beat, by which it is counted in: 3 for triplets. A phrase has that of most of its moving notes. */
  readonly division: Division;
  /** Beats of a bar. */
  readonly bar: number;
  /** Beats from the first bar line, rising; none before it. */
  readonly onsets: readonly Beats[];
  /** Of all of it: whole bars. */
  readonly length: Beats;
}

/** Into how many a beat can be divided. */
export const DIVISIONS = [1, 2, 3, 4] as const;
export type Division = (typeof DIVISIONS)[number];

/**
 * Onsets asked of a card. The standard error of a spread from n onsets is about 1 / √(2n) of it: 10 % from 48, so that
 * a player at .7 of a bar and one at 1.5 of it are hardly ever taken for one another.
 */
export const TAPS = 48;

/**
 * A named figure for at least so many onsets.
 * @throws RangeError where the bar or the number of onsets is below 1 or not whole.
 */
export function evenFigure(name: FigureName, bar = 4, taps = TAPS): Figure {
  requireWhole(bar, taps);
  const division = FIGURES[name];
  const bars = Math.ceil(taps / (division * bar));
  const onsets = Array.from({ length: bars * bar * division }, (_, i) => beats(i, division));
  return { division, bar, onsets, length: beats(bars * bar) };
}

/**
 * The rhythm of a phrase, over and over in whole bars until it has so many onsets. The last note is held to the end of
 * its bar; a pickup fills the end of the bar before.
 *
 * @param pickup beats before the first bar line
 * @throws RangeError where the phrase has no notes, or two of them begin together; and as `evenFigure`.
 */
export function phraseFigure(
  { notes }: { readonly notes: readonly Pick<PhraseNote, 'at' | 'length'>[] },
  { bar = 4, pickup = beats(0), taps = TAPS }: { bar?: number; pickup?: Beats; taps?: number } = {},
): Figure {
  requireWhole(bar, taps);
  if (notes.length === 0) throw new RangeError('A phrase without notes has no rhythm.');
  const lead = pickup.n > 0 ? subtract(beats(bar), pickup) : beats(0);
  const once = notes.map(({ at }) => add(lead, at));
  if (once.some((at, i) => i > 0 && compare(once[i - 1]!, at) >= 0))
    throw new RangeError('The notes of a phrase follow one another, each after the one before.');
  const last = notes.at(-1)!;
  const length = bar * Math.ceil(toNumber(add(add(lead, last.at), last.length)) / bar - 1e-9);
  const rounds = Math.ceil(taps / once.length);
  const onsets = Array.from({ length: rounds }, (_, round) =>
    once.map((at) => add(at, beats(round * length))),
  ).flat();
  return { division: divisionOf(once), bar, onsets, length: beats(rounds * length) };
}

/** The division of the beat that most steps from note to note go by; the coarser of two that are as usual. */
function divisionOf(onsets: readonly Beats[]): Division {
  const steps = onsets.slice(1).map((at, i) => subtract(at, onsets[i]!));
  const count = (division: number) =>
    steps.filter((step) => compare(step, beats(1, division)) === 0).length;
  return DIVISIONS.reduce<Division>((best, d) => (count(d) > count(best) ? d : best), 1);
}

/**
 * The words that count one bar, a list for each beat: the number of the beat, and what stands between it and the next
 * (common practice: `1 2 3, 2 2 3`, `1 & 2 &`, `1 e & a`).
 */
export function countWords({ division, bar }: Pick<Figure, 'division' | 'bar'>): string[][] {
  return Array.from({ length: bar }, (_, beat) => [`${beat + 1}`, ...BETWEEN[division]]);
}

const BETWEEN: Readonly<Record<Division, readonly string[]>> = {
  1: [],
  2: ['&'],
  3: ['2', '3'],
  4: ['e', '&', 'a'],
};

/** One bar counted, as it is written: `1 2 3, 2 2 3, 3 2 3, 4 2 3`; `1 & 2 & 3 & 4 &`. */
export function countText(figure: Pick<Figure, 'division' | 'bar'>): string {
  const by = figure.division > 2 ? ', ' : ' ';
  return countWords(figure)
    .map((words) => words.join(' '))
    .join(by);
}

function requireWhole(bar: number, taps: number) {
  if (!(Number.isInteger(bar) && bar > 0 && Number.isInteger(taps) && taps > 0))
    throw new RangeError('A bar has whole beats and a figure whole onsets, one at least.');
}
