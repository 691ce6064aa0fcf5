import { itemsOf } from '../../cards/index.ts';
import { MOST, type Deck } from '../../decks/deck.ts';
import type { Report } from '../../decks/report.ts';
import type { Finding } from '../../making/finding.ts';
import { draftOf, shortened } from '../../making/fromDeck.ts';
import { takenForm, takenMarks } from '../../making/taken.ts';
import { listed } from '../../parts/english.ts';
import type { Confusion } from '../../practice/confusions.ts';
import { marksOf, weakDrills } from '../../practice/lesson.ts';
import { evenDrills, leapingDrills, narrowedInTime } from '../../practice/nextInTime.ts';
import { pictureOf } from '../../practice/picture.ts';
import { chordOn } from '../../theory/chord.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { parentKey } from '../../theory/scale.ts';
import { daysUntil, startOf } from '../days.ts';
import { dayAfter } from '../tomorrow.ts';
import { counted } from '../figures.ts';
import { go } from '../router.ts';
import { beginDraft, openKept } from '../teach/kept/kept.ts';
import type { KnownReport } from './reports.ts';
import { confusionWords } from './reportWords.ts';

/** Opens the next lesson, made from what these reports on one lesson show to be weak, in the form. */
export async function makeNext(some: readonly KnownReport[], now: number): Promise<void> {
  const [first] = some;
  if (!first) return;
  const { deck } = first.lesson;
  const reports = some.map(({ report }) => report);
  const findings = findingsOf(deck, some);
  const taken = { drills: narrowedInTime(deck.drills, reports), findings };
  await openKept();
  beginDraft({
    ...draftOf(deck),
    ...(deck.drills.length > 0 && takenForm(taken)),
    title: onceMore(deck.title),
    note: '',
    lessonDay: deck.lessonDay && weekAfter(deck.lessonDay, now),
    marks: takenMarks(taken),
    taken: findings.length > 0 ? taken : null,
  });
  go('teach');
}

/** What is found in these reports, first what is taken for what; all of it used. */
function findingsOf(deck: Deck, some: readonly KnownReport[]): Finding[] {
  const reports = some.map(({ report }) => report);
  const pairs = pairsIn(some).slice(0, PAIRS);
  const found = pairs.map((pair) => ({
    says: confusionWords(pair, deck.key),
    degrees: [pair.degree, pair.takenFor],
  }));
  const named = new Set(found.flatMap(({ degrees }) => degrees));
  return [
    ...found,
    ...leastKnown(deck, some, named),
    ...inTime(deck, reports),
    ...howHard(deck, reports),
  ].map((one) => ({ ...NOTHING, ...one }));
}

const NOTHING: Finding = { says: '', used: true, degrees: [], strings: [], drills: [], marks: {} };

/** So many pairs that are taken for one another are as much as a lesson can be about. */
const PAIRS = 3;
/** Once may be a slip of the thumb. */
const OFTEN = 2;

/** What was taken for what over all reports, most often first. */
function pairsIn(some: readonly KnownReport[]): Confusion[] {
  const found = new Map<string, Confusion>();
  for (const { report, items } of some)
    for (const pair of pictureOf(report, items).confusions) {
      const key = [pair.kind, pair.size, pair.degree, pair.takenFor].join();
      found.set(key, { ...pair, times: pair.times + (found.get(key)?.times ?? 0) });
    }
  return [...found.values()]
    .filter(({ times }) => times >= OFTEN)
    .toSorted((a, b) => b.times - a.times);
}

type Found = Partial<Finding> & Pick<Finding, 'says'>;

/** The degrees of least recall beside those named, and the string sets, where these are not all. */
function leastKnown(
  { drills, ...deck }: Deck,
  some: readonly KnownReport[],
  named: ReadonlySet<number>,
): Found[] {
  const reports = some.map(({ report }) => report);
  const weak = weakDrills({ ...deck, drills }, some[0]!.items, reports);
  const degreesIn = (all: typeof drills) =>
    new Set(all.flatMap((drill) => ('degrees' in drill ? drill.degrees : [])));
  const setsIn = (all: typeof drills) =>
    new Set(all.flatMap((drill) => ('strings' in drill ? drill.strings.map(String) : [])));
  const size = drills.flatMap((drill) => ('sizes' in drill ? drill.sizes : []))[0] ?? 'triad';
  const numeral = (degree: number) => numeralLabel(chordOn(parentKey(deck.key), degree, size));
  const degrees = [...degreesIn(weak)].filter((degree) => !named.has(degree)).toSorted();
  const isAll = degrees.length === degreesIn(drills).size;
  const sets = [...setsIn(weak)];
  const fewer = sets.length < setsIn(drills).size;
  return [
    ...(degrees.length > 0
      ? [
          {
            says: isAll ? 'Every degree once more' : `${listed(degrees.map(numeral))} least known`,
            degrees,
          },
        ]
      : []),
    ...(fewer
      ? [
          {
            says: `Least known on strings ${listed(sets.map((set) => set.replaceAll(',', '–')))}`,
            strings: sets.map((set) => set.split(',').map(Number)),
          },
        ]
      : []),
  ];
}

function inTime(deck: Deck, reports: readonly Report[]): Found[] {
  const [even, leaping] = [evenDrills(deck, reports), leapingDrills(deck, reports)];
  return [
    ...(even.length > 0
      ? [{ says: 'Free minutes uneven: triplets to be kept even', drills: even }]
      : []),
    ...(leaping.length > 0
      ? [{ says: 'Free minutes run up and down the scale: arpeggios to play', drills: leaping }]
      : []),
  ];
}

function howHard(deck: Deck, reports: readonly Report[]): Found[] {
  const { marks } = marksOf(reports, itemsOf(deck));
  const count = Object.keys(marks).length;
  return count > 0 ? [{ says: `${counted(count, 'item')} marked easy or hard`, marks }] : [];
}

const AGAIN = ': once more';

function onceMore(title: string): string {
  return title.endsWith(AGAIN) ? title : shortened(title, MOST.title - AGAIN.length) + AGAIN;
}

/** The same day of the week, the first that is not past. */
function weekAfter(lessonDay: string, now: number): string {
  let day = dayAfter(startOf(lessonDay), 7);
  while (daysUntil(day, now) < 0) day = dayAfter(startOf(day), 7);
  return day;
}
