import {
  analyse,
  SURE_READING,
  type Analysis,
  type AnalysisOptions,
} from '../../src/theory/analysis/analysis.ts';
import { sameChord } from '../../src/theory/analysis/candidates.ts';
import type { Told } from './analysis-phrases.ts';

/** How often an analysis was right, in percent; groups are counted by their truth. */
export interface Score {
  readonly groups: number;
  readonly spans: number;
  /** Of the chord's root, whatever the span that the group was given, note by note of the truth's groups. */
  readonly degree: number;
  readonly degreeAndSize: number;
  readonly precision: number;
  readonly recall: number;
  readonly f1: number;
  /** Of the embellishing tones found, how many are called by their kind. */
  readonly kinds: number;
  /** How many groups are sure (.9 and more), and how often those are right. */
  readonly sure: number;
  readonly sureAndRight: number;
  /** How many are asked about (below .7), and how often those are right. */
  readonly asked: number;
  readonly askedAndRight: number;
}

const percent = (part: number, whole: number) => (whole === 0 ? 100 : (100 * part) / whole);

/**
 * Compares analyses with the truth. A group's degree is right where the group that holds most of its notes has it; all
 * else is counted exactly.
 */
export function score(
  told: readonly Told[],
  options: AnalysisOptions = {},
  log?: (text: string) => void,
): Score {
  const n = { groups: 0, spans: 0, degree: 0, both: 0, hit: 0, found: 0, there: 0, kind: 0 };
  const c = { sure: 0, sureRight: 0, asked: 0, askedRight: 0 };
  for (const truth of told) {
    const { bar, pickup } = truth;
    const analysis = analyse(truth.phrase, truth.key, { bar, pickup, ...options });
    let right = true;
    for (const group of truth.groups) {
      const given = mostOf(analysis, group.from, group.to);
      const span = given.from === group.from && given.to === group.to;
      const degree =
        given.chord.degree === group.chord.degree && given.chord.root === group.chord.root;
      const both = degree && sameChord(given.chord, group.chord);
      n.groups++;
      n.spans += Number(span);
      n.degree += Number(degree);
      n.both += Number(both);
      const sure = given.confidence >= 0.9;
      const asked = given.confidence < SURE_READING;
      c.sure += Number(sure);
      c.sureRight += Number(sure && both && span);
      c.asked += Number(asked);
      c.askedRight += Number(asked && both && span);
      right &&= both && span;
    }
    analysis.notes.forEach(({ member, embellishment }, i) => {
      const is = truth.embellishments[i]!;
      n.found += Number(member === null);
      n.there += Number(is !== null);
      if (member === null && is !== null) n.hit++;
      if (is !== null && is === embellishment) n.kind++;
      right &&= (member === null) === (is !== null);
    });
    if (!right)
      log?.(`${truth.name}\n  is    ${tell(truth.groups)}\n  given ${tell(analysis.groups)}`);
  }
  const [precision, recall] = [percent(n.hit, n.found), percent(n.hit, n.there)];
  return {
    groups: n.groups,
    spans: percent(n.spans, n.groups),
    degree: percent(n.degree, n.groups),
    degreeAndSize: percent(n.both, n.groups),
    precision,
    recall,
    f1: (2 * precision * recall) / (precision + recall || 1),
    kinds: percent(n.kind, n.hit),
    sure: percent(c.sure, n.groups),
    sureAndRight: percent(c.sureRight, c.sure),
    asked: percent(c.asked, n.groups),
    askedAndRight: percent(c.askedRight, c.asked),
  };
}

function mostOf({ groups }: Analysis, from: number, to: number) {
  const shared = (group: { from: number; to: number }) =>
    Math.min(group.to, to) - Math.max(group.from, from);
  return groups.reduce((a, b) => (shared(b) > shared(a) ? b : a));
}

const tell = (groups: readonly { from: number; to: number; chord: { symbol: string } }[]) =>
  groups.map(({ from, to, chord }) => `${chord.symbol}[${from}–${to})`).join(' ');

/** All figures in one line. */
export function figures(scored: Score): string {
  return Object.entries(scored)
    .map(([name, value]) => `${name} ${name === 'groups' ? value : value.toFixed(1)}`)
    .join(' · ');
}
