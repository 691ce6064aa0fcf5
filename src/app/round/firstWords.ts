import type { Explanation } from '../../cards/kind.ts';
import { memory } from '../state.ts';
import { round } from './session.ts';

const WORDS =
  'A degree is the step of the scale that it stands on, I to VII: soon you are asked, and tap it.';

/** On the first card of all, what a degree is and what to tap, behind what is worth adding. */
export function withFirstWords(explanation: Explanation): Explanation {
  const { met, asked } = round.value!;
  if (memory.value.of.asked > 0 || met.length > 0 || asked.length > 0) return explanation;
  return { ...explanation, detail: `${explanation.detail} ${WORDS}`.trim() };
}
