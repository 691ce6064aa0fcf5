import type { Memory } from '../../memory/memory.ts';
import type { Item } from '../../practice/item.ts';
import { minutesADay } from '../../practice/untilReady.ts';

/** How long a round is: so many minutes, or until enough is known; or the one that was begun, gone on with. */
export type Length = number | 'enough' | 'go on';

/** The longest round that is offered unasked, minutes: about eight a day were as good as more (Molloy et al. 2012). */
const [SHORTEST, LONGEST] = [3, 8];

/** Minutes of rounds that one may choose, shortest first. */
const MINUTES = [3, 4, 5, 6, 7, 8, 10, 12, 15, 20];

/** The minutes a day that make the lesson ready, as far as they are worth their while. */
export function usualMinutes(
  items: readonly Item[],
  memory: Memory,
  now: number,
  lessonAt: number | null,
): number {
  return Math.min(LONGEST, Math.max(SHORTEST, minutesADay(items, memory, now, lessonAt)));
}

/** All lengths in the order in which one steps through them. */
export function lengthsOf(goesOn: boolean): readonly Length[] {
  return [...(goesOn ? (['go on'] as const) : []), ...MINUTES, 'enough'];
}
