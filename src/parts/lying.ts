import { signal } from '@preact/signals';

// A low, wide screen is a phone lying down; a desktop window is wide but not low.
const query =
  typeof matchMedia === 'function'
    ? matchMedia('(orientation: landscape) and (max-height: 560px)')
    : null;
const lying = signal(query?.matches ?? false);
query?.addEventListener('change', (event) => (lying.value = event.matches));

/** Whether the phone, and so the neck, lies down. */
export function useLying(): boolean {
  return lying.value;
}
