/** How much of arpeggios drills ask for, which a lesson may not have too much of. */
import { memberCount } from '../theory/chord.ts';
import { isPhraseDrill, isTimeDrill, MOST, type Drill } from './deck.ts';

/** How many arpeggios drills ask for together. */
export function arpeggiosOf(drills: readonly Drill[]): number {
  return drills.reduce((sum, drill) => sum + arpeggiosOfOne(drill), 0);
}

function arpeggiosOfOne(drill: Drill): number {
  if (isPhraseDrill(drill) || isTimeDrill(drill)) return 0;
  const ways = 'contours' in drill ? drill.contours.length : drill.strings.length * waysOf(drill);
  return drill.degrees.length * drill.sizes.length * ways;
}

const waysOf = (drill: object) =>
  'ways' in drill && Array.isArray(drill.ways) ? drill.ways.length : 1;

/** Whether so large a chord lies on so many strings that for a card thousands of shapes are looked through. */
export function isWide(drill: Drill): boolean {
  return (
    'strings' in drill &&
    drill.strings.some(({ length }) =>
      drill.sizes.some((size) => memberCount(size) * length > MOST.spread),
    )
  );
}
