import { memory } from '../state.ts';
import { round } from './session.ts';

/** On the first card of all: what a degree is, and what to tap. */
export function FirstWords() {
  const { met, asked } = round.value!;
  if (memory.value.of.asked > 0 || met.length > 0 || asked.length > 0) return null;
  return (
    <p class="soft first-words">
      A degree is the step of the scale that an arpeggio stands on, I to VII. Look, listen, tap
      Next: soon it is asked.
    </p>
  );
}
