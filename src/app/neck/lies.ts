import { LYING, matching } from '../../parts/lying.ts';

/** A phone lying down, or a screen wide enough for all frets side by side. As in NeckScreen.css. */
const lies = matching(`${LYING}, (orientation: landscape) and (min-width: 960px)`);

/** Whether the whole neck lies down. */
export function useLies(): boolean {
  return lies.value;
}
