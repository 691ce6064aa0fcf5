/** What a report says of its lesson, once the lesson's items are known. */
import { isConfusing, isKindOf } from '../decks/kinds.ts';
import { MOST_TOLD, type Report } from '../decks/report.ts';
import { DAY } from '../memory/day.ts';
import type { Confusion } from './confusions.ts';
import { itemDegree, isOfPhrase, type Item } from './item.ts';

/** How much is known of some items, 0 to 1, one that was never seen counted as not known; and how many were seen. */
interface Standing {
  readonly recall: number;
  readonly seen: number;
  readonly of: number;
  /** How many were answered slowly. */
  readonly slow: number;
}

/** A string set and a stretch of frets, or all that is heard: what is known there. */
export interface KnownRegion extends Standing {
  /** `3-2`, empty for what is heard. */
  readonly strings: string;
  /** `1-7`, empty for what is heard. */
  readonly frets: string;
  /** Whether arpeggios of phrases lie there, and not those of a drill on these strings and frets. */
  readonly inPhrases: boolean;
  /** Whether it is what is kept in time, which lies nowhere and is not heard either. */
  readonly inTime: boolean;
}

/** A lesson's items as its report has them. */
export interface Picture {
  /** On lesson day. */
  readonly all: Standing;
  /** The share right of answers that were the first to an item on a day; null where that is not told. */
  readonly firstRight: number | null;
  /** Much was asked and little of it stays: fewer items, shown once more, would help. */
  readonly littleStays: boolean;
  /** By degree, the first of them at 0; null where the lesson has no item on it. */
  readonly byDegree: readonly (Standing | null)[];
  /** The degrees that are least known of those that were asked, the weakest first. */
  readonly weak: readonly number[];
  /** The degrees of which nothing was asked yet. */
  readonly untried: readonly number[];
  readonly confusions: readonly Confusion[];
  readonly askedAbout: readonly Item[];
}

/** How many days after a report its lesson is: to its lesson day, or a week where there is none or it is past. */
export function daysAhead(report: Pick<Report, 'day'>, lessonDay: string | null): number {
  const days = lessonDay === null ? 0 : Date.parse(`${lessonDay}T00:00Z`) / DAY - report.day;
  return days > 0 ? days : 7;
}

/** Whether a report tells of so many items as a lesson has; else it is of another lesson, whatever it says. */
export function fits(report: Report, items: readonly Item[]): boolean {
  return report.items.length === Math.min(items.length, MOST_TOLD.items);
}

/** Each item's chance of being known on lesson day, 0 to 1; 0 where it was never asked. */
export function recalls(report: Report): number[] {
  return report.items.map((facts) => facts?.recall ?? 0);
}

/** So much of what was asked so often is little. */
const LITTLE = { recall: 0.25, answers: 20 };

/** The picture that a report gives of a lesson's items on lesson day. */
export function pictureOf(report: Report, items: readonly Item[]): Picture {
  const standing = standingIn(report, recalls(report));
  const { all, degrees } = groupsOf(items);
  const byDegree = degrees.map((some) => (some.length === 0 ? null : standing(some)));
  const whole = standing(all);
  return {
    all: whole,
    firstRight: report.firstAsked === 0 ? null : report.firstRight / report.firstAsked,
    littleStays:
      report.asked >= LITTLE.answers && whole.recall * whole.of < LITTLE.recall * whole.seen,
    byDegree,
    weak: weakest(byDegree),
    untried: byDegree.flatMap((one, i) => (one?.seen === 0 ? [i + 1] : [])),
    confusions: confusionsOf(report, items),
    askedAbout: report.askedAbout.flatMap((i) => items[i] ?? []),
  };
}

/** Where on the neck what is known on lesson day. */
export function regionsOf(report: Report, items: readonly Item[]): KnownRegion[] {
  const standing = standingIn(report, recalls(report));
  return groupsOf(items).regions.map(({ indexes, frets, ...where }) => ({
    ...where,
    frets: frets?.join('-') ?? '',
    ...standing(indexes),
  }));
}

/** Tells of some items, by their places, what the report says of them together. */
function standingIn({ items }: Report, chances: readonly number[]) {
  return (some: readonly number[]): Standing => {
    let [sum, seen, slow] = [0, 0, 0];
    for (const i of some) {
      const facts = items[i];
      sum += chances[i] ?? 0;
      if (facts) seen++;
      if (facts?.slow) slow++;
    }
    const of = some.length;
    return { recall: of === 0 ? 0 : sum / of, seen, of, slow };
  };
}

/** The places of items that belong together: all, those of each degree, those of each region. */
interface Groups {
  readonly all: readonly number[];
  readonly degrees: readonly (readonly number[])[];
  readonly regions: readonly Lying[];
}

/** What lies together on the neck; without strings and frets what is heard. */
interface Lying extends Pick<KnownRegion, 'strings' | 'inPhrases' | 'inTime'> {
  readonly frets: readonly [number, number] | undefined;
  /** Which items, by their order in the lesson. */
  readonly indexes: readonly number[];
}

const known = new WeakMap<readonly Item[], Groups>();

/** Found once for a lesson: a class's reports on it are many. */
function groupsOf(items: readonly Item[]): Groups {
  const before = known.get(items);
  if (before) return before;
  const told = items.slice(0, MOST_TOLD.items);
  const degrees: number[][] = [[], [], [], [], [], [], []];
  const regions = new Map<string, Lying>();
  for (const [i, item] of told.entries()) {
    const degree = itemDegree(item);
    if (degree !== null) degrees[degree - 1]?.push(i);
    const { name, ...where } = regionOf(item);
    const there = regions.get(name);
    const indexes = [...(there?.indexes ?? []), i];
    regions.set(name, { ...where, frets: together(there?.frets, where.frets), indexes });
  }
  const groups = { all: [...told.keys()], degrees, regions: [...regions.values()] };
  known.set(items, groups);
  return groups;
}

/**
 * Where an item lies, and what it shares with others that lie there. Each arpeggio of a phrase has frets of its own: those
 * on the same strings are told together, on the frets of all of them.
 */
function regionOf(item: Item) {
  const { kind, strings, frets } = item;
  const inPhrases = strings !== '' && isOfPhrase(item);
  const inTime = isKindOf('time', kind);
  const lying = inPhrases ? `phrases ${strings}` : `${strings}:${strings && frets?.join('-')}`;
  const name = inTime ? 'time' : lying;
  return { name, strings, frets: strings === '' ? undefined : frets, inPhrases, inTime };
}

function together(one: Lying['frets'], other: Lying['frets']): Lying['frets'] {
  if (!one || !other) return one ?? other;
  return [Math.min(one[0], other[0]), Math.max(one[1], other[1])];
}

/** Recall below which a degree is weak, and how many are named. */
const WEAK = { below: 0.8, most: 3 };

function weakest(byDegree: readonly (Standing | null)[]): number[] {
  return byDegree
    .flatMap((standing, i) => (standing?.seen ? [{ degree: i + 1, recall: standing.recall }] : []))
    .filter(({ recall }) => recall < WEAK.below)
    .toSorted((a, b) => a.recall - b.recall)
    .slice(0, WEAK.most)
    .map(({ degree }) => degree);
}

/** What was taken for what, the most frequent first; `times` counts the misses of the last answers. */
function confusionsOf({ items: facts }: Report, items: readonly Item[]): Confusion[] {
  const found = new Map<string, Confusion>();
  facts.forEach((one, i) => {
    const item = items[i];
    if (!one?.takenFor || !item || one.takenFor === item.degree) return;
    const { kind, degree, size } = item;
    if (!isConfusing(kind)) return;
    const { takenFor } = one;
    const key = `${kind} ${size} ${degree} ${takenFor}`;
    const times = (found.get(key)?.times ?? 0) + one.misses;
    found.set(key, { kind, size, degree, takenFor, times });
  });
  return [...found.values()].toSorted((a, b) => b.times - a.times || a.degree - b.degree);
}
