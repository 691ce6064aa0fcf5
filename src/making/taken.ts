/** What the next lesson takes from reports: finding by finding, each of which the teacher may use or leave out. */
import { MOST, type Drill, type Marks } from '../decks/deck.ts';
import type { Draft } from './draft.ts';
import { drillsInForm } from './fromDeck.ts';
import type { Taken } from './finding.ts';

/** The form of a lesson that drills what is used of the findings: of degrees and string sets all where none is named. */
export function takenForm({ drills, findings }: Taken) {
  const used = findings.filter((one) => one.used);
  const degrees = new Set(used.flatMap((one) => one.degrees));
  const sets = new Set(used.flatMap(({ strings }) => strings.map(String)));
  const narrowed = drills.flatMap((drill): Drill[] => {
    if (!('degrees' in drill)) return [drill];
    const own = drill.degrees.filter((degree) => degrees.size === 0 || degrees.has(degree));
    if (own.length === 0) return [];
    if (!('strings' in drill)) return [{ ...drill, degrees: own }];
    const strings = drill.strings.filter((set) => sets.size === 0 || sets.has(String(set)));
    return strings.length === 0 ? [] : [{ ...drill, degrees: own, strings }];
  });
  const left = narrowed.length > 0 ? narrowed : drills;
  return drillsInForm([...left, ...used.flatMap((one) => one.drills)].slice(0, MOST.drills));
}

/** The marks of all findings that are used. */
export function takenMarks({ findings }: Taken): Marks {
  return Object.assign({}, ...findings.map(({ used, marks }) => (used ? marks : {})));
}

/**
 * What changes where a finding is used or left out: the drills are made anew. Where they were changed since, only the
 * form's degrees follow, so that nothing of the teacher's is lost.
 */
export function toggled(made: Draft, taken: Taken, index: number): Partial<Draft> {
  const finding = taken.findings[index]!;
  const used = !finding.used;
  const next = { ...taken, findings: taken.findings.with(index, { ...finding, used }) };
  const marks = used
    ? { ...made.marks, ...finding.marks }
    : without(made.marks, Object.keys(finding.marks));
  const before = takenForm(taken);
  const { degrees, sizes, strings, frets, drills } = made;
  const isAsMade = same(before, { degrees, sizes, strings, frets, drills });
  return { taken: next, marks, ...(isAsMade ? takenForm(next) : adjusted(made, taken, next)) };
}

function adjusted(made: Draft, before: Taken, after: Taken): Partial<Draft> {
  const of = (taken: Taken) => takenForm(taken).degrees;
  const [was, is] = [of(before), of(after)];
  const degrees = [1, 2, 3, 4, 5, 6, 7].filter(
    (degree) => is.includes(degree) || (made.degrees.includes(degree) && !was.includes(degree)),
  );
  return { degrees };
}

function without(marks: Marks, ids: readonly string[]): Marks {
  return Object.fromEntries(Object.entries(marks).filter(([id]) => !ids.includes(id)));
}

function same(one: ReturnType<typeof takenForm>, other: ReturnType<typeof takenForm>): boolean {
  const words = ({ degrees, sizes, strings, frets, drills }: typeof one) =>
    JSON.stringify([degrees, sizes, strings, frets, drills]);
  return words(one) === words(other);
}
