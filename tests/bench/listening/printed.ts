/** Scores as lines to read: every share with the upper end of its 95 % interval where it is small. */
import type { Mistake } from './phrases.ts';
import type { FreeScore } from './free.ts';
import type { Score } from './score.ts';

const percent = (of: number, all: number) => (all === 0 ? '–' : ((100 * of) / all).toFixed(1));

/** The 95 % interval of a share, in per cent (Wilson 1927). */
function interval(of: number, all: number): [string, string] {
  if (all === 0) return ['–', '–'];
  const [z, p] = [1.96, of / all];
  const middle = p + (z * z) / (2 * all);
  const wide = z * Math.sqrt((p * (1 - p)) / all + (z * z) / (4 * all * all));
  const end = (sign: number) => ((100 * (middle + sign * wide)) / (1 + (z * z) / all)).toFixed(1);
  return [end(-1), end(1)];
}

function quantile(values: readonly number[], part: number, places = 1): string {
  const sorted = values.toSorted((a, b) => a - b);
  return (sorted[Math.floor(part * (sorted.length - 1))] ?? NaN).toFixed(places);
}

const REPLACED: readonly Mistake[] = ['semitone', 'octave', 'other', 'skipped'];
const MISTAKES: readonly Mistake[] = [...REPLACED, 'extra', 'again'];

/** One row. */
export function printed(name: string, score: Score): string {
  const { wrongs, right } = score;
  return [
    name.padEnd(24),
    `${right}`.padStart(5),
    `${percent(score.accepted, right)} (${interval(score.accepted, right).join('–')})`.padStart(18),
    `at once ${percent(score.atOnce, right)}`,
    `called wrong ${percent(score.accused, right)} (≤${interval(score.accused, right)[1]})`,
    `let through ${REPLACED.map((kind) => `${wrongs[kind].letThrough}/${wrongs[kind].of}`).join(' ')}`,
    `told ${MISTAKES.map((kind) => percent(wrongs[kind].named, wrongs[kind].of)).join('/')}`,
    `false extras ${percent(score.extras, score.notes)}`,
    `time 95 % ${quantile(score.errors.map(Math.abs), 0.95)} ms`,
    `soon ${percent(score.soon, score.settled)}`,
  ].join('  ');
}

/** What of all rows together was let through. */
export function letThrough(scores: readonly Score[]): string[] {
  return REPLACED.map((kind) => {
    const sum = (what: 'of' | 'letThrough' | 'plucked') =>
      scores.reduce((total, { wrongs }) => total + wrongs[kind][what], 0);
    const bound = interval(sum('letThrough'), sum('of'))[1];
    const all = `${kind} let through: ${sum('letThrough')} of ${sum('of')}, at most ${bound} %`;
    const [left, at] = [sum('letThrough') - sum('plucked'), sum('of')];
    return `${all}; where no such note was plucked for another ${left}, at most ${interval(left, at)[1]} %`;
  });
}

/** Spearman's rank correlation, equal values sharing their mean rank. */
function rankCorrelation(pairs: readonly (readonly [number, number])[]): number {
  const ranks = (of: 0 | 1) =>
    pairs.map(
      (pair) =>
        pairs.filter((other) => other[of] < pair[of]).length +
        pairs.filter((other) => other[of] === pair[of]).length / 2,
    );
  const [a, b] = [ranks(0), ranks(1)];
  const middle = pairs.length / 2;
  const dot = (x: readonly number[], y: readonly number[]) =>
    x.reduce((sum, value, i) => sum + (value - middle) * (y[i]! - middle), 0);
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
}

/** A row of free playing. */
export const printedFree = (name: string, score: FreeScore): string =>
  [
    name.padEnd(24),
    `${score.pieces} improvisations, ${score.notes} notes`,
    `heard ${percent(score.heard, score.notes)}`,
    `told and not played ${percent(score.made, score.notes)}`,
    `true of those told surely ${percent(score.confidentTrue, score.confident)} (${score.confident})`,
    `leaps within 5 points ${percent(score.leapsNear, score.pieces)} (${interval(score.leapsNear, score.pieces).join('–')})`,
    `rank correlation ${rankCorrelation(score.leaps).toFixed(3)}`,
    `longest run within one note ${percent(score.runNear, score.pieces)}`,
    `spread within a tenth ${percent(score.evenNear, score.pieces)} (told ${quantile(score.even, 0.05, 2)} to ${quantile(score.even, 0.95, 2)} of it, median ${quantile(score.even, 0.5, 2)})`,
  ].join('  ');
