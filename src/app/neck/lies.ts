import { signal } from '@preact/signals';

/** A phone lying down, or a screen wide enough for all frets side by side. As in NeckScreen.css. */
const query = matchMedia(
  '(orientation: landscape) and (max-height: 560px), (orientation: landscape) and (min-width: 960px)',
);
const lies = signal(query.matches);
query.addEventListener('change', (event) => (lies.value = event.matches));

/** Whether the whole neck lies down. */
export function useLies(): boolean {
  return lies.value;
}
