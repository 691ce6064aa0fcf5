/** The next lesson, from what one or several reports on the last one tell. */
import { isPhraseDrill, type Deck, type Drill, type Mark, type Marks } from '../decks/deck.ts';
import type { Report } from '../decks/report.ts';
import { DEGREES } from '../theory/scale.ts';
import type { Item } from './item.ts';
import { recalls } from './report.ts';

/** Answers of each student to an item that its misses are counted in. */
const LATELY = 3;

/** So many answers as the mean item has stand beside those to each: four students' worth. */
const PRIOR = 12;

/**
 * How hard each item is for these students. The share of its last answers missed, with `PRIOR` answers of the mean item
 * added, so that few answers move it little; a mark is a factor of two in the odds of a miss. Items in the middle have none.
 */
export function marksOf(reports: readonly Report[], items: readonly Item[]): Marks {
  const missed = items.map(() => 0);
  const asked = items.map(() => 0);
  for (const report of reports) {
    report.items.forEach((facts, i) => {
      if (!facts || i >= items.length) return;
      missed[i]! += facts.misses;
      asked[i]! += LATELY;
    });
  }
  const sum = (of: readonly number[]) => of.reduce((total, one) => total + one, 0);
  // Never quite none nor all, whose odds would have no bounds.
  const mean = (sum(missed) + 1) / (sum(asked) + 2);
  const odds = (share: number) => share / (1 - share);
  const marks: Record<string, Mark> = {};
  items.forEach(({ id }, i) => {
    const share = (missed[i]! + PRIOR * mean) / (asked[i]! + PRIOR);
    const steps = Math.round(Math.log2(odds(share) / odds(mean)));
    const mark = (3 + Math.max(-2, Math.min(2, steps))) as Mark;
    if (mark !== 3) marks[id] = mark;
  });
  return marks;
}

/** Recall on lesson day from which a degree or a string set is left out of the next lesson; so many stay in any case. */
const KNOWN = 0.85;
const LEAST = { degrees: 3, stringSets: 1 };

/**
 * The drills of a lesson once more, for what is weak: the degrees and string sets of least recall over these reports;
 * drills of its phrases as they are.
 * Frets stay as they are, so that every item keeps its id and with it what is remembered of it.
 *
 * @param ahead days from the reports to the lesson, as `daysAhead` gives them, one a report
 */
export function weakDrills(
  deck: Deck,
  items: readonly Item[],
  reports: readonly Report[],
  ahead: readonly number[],
): Drill[] {
  const mean = meanRecalls(reports, ahead, items.length);
  const weak = <T>(all: readonly T[], has: (item: Item, one: T) => boolean, least: number) =>
    weakOf(
      all.flatMap((one) => {
        const some = mean.filter((_, i) => has(items[i]!, one));
        return some.length === 0
          ? []
          : [{ one, recall: some.reduce((sum, each) => sum + each, 0) / some.length }];
      }),
      least,
    );
  const degrees = weak(DEGREES, (item, degree) => item.degree === degree, LEAST.degrees);
  const drilled = deck.drills.flatMap((drill) => ('strings' in drill ? drill.strings : []));
  const sets = [...new Set(drilled.map((set) => set.join('-')))];
  const strings = weak(sets, (item, set) => item.strings === set, LEAST.stringSets);
  return deck.drills.flatMap((drill): Drill[] => {
    if (isPhraseDrill(drill)) return [drill];
    const own = { degrees: drill.degrees.filter((degree) => degrees.includes(degree)) };
    if (own.degrees.length === 0) return [];
    if (!('strings' in drill)) return [{ ...drill, ...own }];
    const ownSets = drill.strings.filter((set) => strings.includes(set.join('-')));
    return ownSets.length === 0 ? [] : [{ ...drill, ...own, strings: ownSets }];
  });
}

/** Those below `KNOWN`, and the least known ones up to `least`, in their order. */
function weakOf<T>(all: readonly { one: T; recall: number }[], least: number): T[] {
  const ranked = all.toSorted((a, b) => a.recall - b.recall);
  const weak = ranked.filter(({ recall }, rank) => recall < KNOWN || rank < least);
  return all.filter((each) => weak.includes(each)).map(({ one }) => one);
}

function meanRecalls(
  reports: readonly Report[],
  ahead: readonly number[],
  count: number,
): number[] {
  const sums = Array<number>(count).fill(0);
  reports.forEach((report, k) => {
    recalls(report, ahead[k]!)
      .slice(0, count)
      .forEach((recall, i) => (sums[i]! += recall));
  });
  return sums.map((sum) => sum / reports.length);
}
