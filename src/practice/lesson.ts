/** The next lesson, from what one or several reports on the last one tell. */
import {
  isPhraseDrill,
  isTimeDrill,
  type Deck,
  type Drill,
  type Mark,
  type Marks,
} from '../decks/deck.ts';
import type { Report } from '../decks/report.ts';
import { DEGREES } from '../theory/scale.ts';
import { itemDegree, type Item } from './item.ts';
import { recalls } from './picture.ts';

/**
 * An item's common ease is believed as if so many more answers had found it in the middle: what is true of one student
 * need not be of others.
 */
const PRIOR = 6;

/** So much of ease, on the logistic scale, is a step of marks. */
const STEP = 0.15;

/** What several students' reports say of how hard items are. */
interface ClassMarks {
  /** Items in the middle have none. */
  readonly marks: Marks;
  /** How many answers stand behind them: of all items, and of each. */
  readonly answers: number;
  readonly answersTo: ReadonlyMap<string, number>;
}

/**
 * How hard each item is for these students, from the ease that each one's phone reckons, weighed by the answers behind it.
 * Reports that do not tell of ease count for nothing.
 */
export function marksOf(reports: readonly Report[], items: readonly Item[]): ClassMarks {
  const marks: Record<string, Mark> = {};
  const answersTo = new Map<string, number>();
  let all = 0;
  items.forEach(({ id }, i) => {
    let [sum, answers] = [0, 0];
    for (const report of reports) {
      const facts = report.items[i];
      if (!facts || facts.ease === null) continue;
      // Of the roughest links the answers are not told: one is sure.
      const weight = Math.max(1, facts.answers);
      sum += weight * facts.ease;
      answers += weight;
    }
    if (answers === 0) return;
    all += answers;
    answersTo.set(id, answers);
    const steps = Math.round(sum / (answers + PRIOR) / STEP);
    const mark = (3 - Math.max(-2, Math.min(2, steps))) as Mark;
    if (mark !== 3) marks[id] = mark;
  });
  return { marks, answers: all, answersTo };
}

/** Recall on lesson day from which a degree or a string set is left out of the next lesson; so many stay in any case. */
const KNOWN = 0.85;
const LEAST = { degrees: 3, stringSets: 1 };

/**
 * The drills of a lesson once more, for what is weak: the degrees and string sets of least recall over these reports;
 * drills of its phrases and of time as they are.
 * Frets stay as they are, so that every item keeps its id and with it what is remembered of it.
 */
export function weakDrills(
  deck: Deck,
  items: readonly Item[],
  reports: readonly Report[],
): Drill[] {
  const mean = meanRecalls(reports, items.length);
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
  const degrees = weak(DEGREES, (item, degree) => itemDegree(item) === degree, LEAST.degrees);
  const drilled = deck.drills.flatMap((drill) => ('strings' in drill ? drill.strings : []));
  const sets = [...new Set(drilled.map((set) => set.join('-')))];
  const strings = weak(sets, (item, set) => item.strings === set, LEAST.stringSets);
  return deck.drills.flatMap((drill): Drill[] => {
    if (isPhraseDrill(drill) || isTimeDrill(drill)) return [drill];
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

function meanRecalls(reports: readonly Report[], count: number): number[] {
  const sums = Array<number>(count).fill(0);
  for (const report of reports) {
    recalls(report)
      .slice(0, count)
      .forEach((recall, i) => (sums[i]! += recall));
  }
  return sums.map((sum) => sum / reports.length);
}
