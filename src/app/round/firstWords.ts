import { KINDS } from '../../cards/here.ts';
import type { Card, Explanation } from '../../cards/kind.ts';
import { itemDegree } from '../../practice/item.ts';
import { memory } from '../state.ts';
import { round } from './session.ts';

const DEGREE = 'A degree is the step of the scale that something stands on, I to VII';

/** On the first card of all, what a degree is and what to tap, behind what is worth adding. It stays as long as the card does. */
export function withFirstWords({ item }: Card, explanation: Explanation): Explanation {
  const { met, asked } = round.peek()!;
  if (memory.peek().of.asked > 0 || met.length > 0 || asked.length > 0) return explanation;
  const { soon } = KINDS[item.kind].words;
  const words =
    itemDegree(item) === null ? soon[0]!.toUpperCase() + soon.slice(1) : `${DEGREE}: ${soon}`;
  return { ...explanation, detail: `${explanation.detail} ${words}`.trim() };
}
