import { signal, type ReadonlySignal } from '../signals/signal.ts';

/** A low, wide screen is a phone lying down; a desktop window is wide but not low. */
export const LYING = '(orientation: landscape) and (max-height: 560px)';

/** Whether a media query matches now; never where there is no screen. */
export function matching(query: string): ReadonlySignal<boolean> {
  const list = typeof matchMedia === 'function' ? matchMedia(query) : null;
  const matches = signal(list?.matches ?? false);
  list?.addEventListener('change', (event) => (matches.value = event.matches));
  return matches;
}

const lying = matching(LYING);

/** Whether the phone, and so the neck, lies down. */
export function useLying(): boolean {
  return lying.value;
}

/** A screen wide enough for what otherwise comes one after the other to lie side by side. */
export const WIDE = '(min-width: 1024px) and (min-height: 561px)';

const wide = matching(WIDE);

/** Whether there is room side by side. */
export function useWide(): boolean {
  return wide.value;
}
