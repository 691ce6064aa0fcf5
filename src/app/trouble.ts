import { signal } from '@preact/signals';

/** Why something could not be kept on the device, as a sentence; null while all is well. */
export const trouble = signal<string | null>(null);
