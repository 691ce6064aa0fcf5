/** What the next lesson drills of time and of leaps, from what reports tell. */
import {
  isPhraseDrill,
  isTimeDrill,
  MOST,
  type Deck,
  type Drill,
  type DrilledFigure,
  type NeckDrill,
  type TimeDrill,
} from '../decks/deck.ts';
import { isKindOf } from '../decks/kinds.ts';
import type { Report } from '../decks/report.ts';

type Timed = Pick<Report, 'time'>;

/** So many steps in a row, and no more leaps than this, are running scales; such a spread around the beat is uneven, in seconds (judgements). */
const RUNS = { steps: 7, leaping: 0.25 } as const;
const UNEVEN = 0.035;

/** A drill of time where there was none. */
const KEPT_EVEN: TimeDrill = {
  kind: 'pulse',
  figures: ['triplets'],
  tempos: [60, 72, 84, 96],
  clicks: ['beat', 'gone'],
};

/** Whether the free minutes of a student run up and down the scale. */
export function runsScales({ time: { minutes } }: Timed): boolean {
  return minutes !== null && minutes.run >= RUNS.steps && minutes.leaping <= RUNS.leaping;
}

/**
 * The drills with those that fit what reports tell of time: of drills of time the figures that someone has not kept even
 * at their fastest yet, or limps or rushes in; one of triplets where there is none and free minutes are uneven; and
 * arpeggios to be played where someone runs scales.
 */
export function fittedInTime(
  drills: readonly Drill[],
  deck: Deck,
  reports: readonly Timed[],
): Drill[] {
  const more = [...evenDrills(deck, reports), ...leapingDrills(deck, reports)];
  return [...narrowedInTime(drills, reports), ...more].slice(0, MOST.drills);
}

/** The drills, those of time with the figures that someone has not kept even at their fastest yet, or limps or rushes in. */
export function narrowedInTime(drills: readonly Drill[], reports: readonly Timed[]): Drill[] {
  return drills.flatMap((drill): readonly Drill[] =>
    isTimeDrill(drill) ? narrowed(drill, reports) : [drill],
  );
}

/** One of triplets where there is none and free minutes are uneven. */
export function evenDrills({ drills }: Deck, reports: readonly Timed[]): Drill[] {
  const isUneven = reports.some(({ time: { minutes } }) => (minutes?.spread ?? 0) > UNEVEN);
  return isUneven && !drills.some(isTimeDrill) ? [KEPT_EVEN] : [];
}

/** Arpeggios to be played where someone runs scales. */
export function leapingDrills(deck: Deck, reports: readonly Timed[]): Drill[] {
  return reports.some(runsScales) ? leapsToPlay(deck) : [];
}

/** Tempos and clicks stay as they are, so that every item keeps its id. */
function narrowed(drill: TimeDrill, reports: readonly Timed[]): TimeDrill[] {
  const told = reports.flatMap(({ time }) => time.figures);
  const isDone = (figure: DrilledFigure) => {
    const own = told.filter((one) => one.figure === figure);
    const fastest = drill.tempos.at(-1)!;
    return (
      own.length === reports.length &&
      own.every(
        ({ tempo, limps, drift }) =>
          tempo !== null && tempo >= fastest && limps === null && drift === null,
      )
    );
  };
  const figures = drill.figures.filter((figure) => !isDone(figure));
  return figures.length > 0 ? [{ ...drill, figures }] : [];
}

/** The phrases, or else the arpeggios of the first drill on the neck, up and back; none where some are played already. */
function leapsToPlay({ drills, phrases }: Deck): Drill[] {
  if (drills.some(({ kind }) => kind === 'play')) return [];
  if (phrases.length > 0) return [{ kind: 'play' }];
  const onNeck = drills.find(
    (drill): drill is NeckDrill => !isPhraseDrill(drill) && isKindOf('neck', drill.kind),
  );
  if (!onNeck) return [];
  return [{ ...onNeck, kind: 'play', ways: ['turn'] }];
}
