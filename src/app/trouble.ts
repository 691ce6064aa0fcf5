import { signal } from '../signals/signal.ts';

/** Why something could not be kept on the device, as a sentence; null while all is well. */
export const trouble = signal<string | null>(null);

/** What is on the device and cannot be read, as a sentence; it stays, as that does. */
export const unreadable = signal<string | null>(null);

/** Whether another window has erased everything on this device: this one stops, lest it writes some of it anew. */
export const erasedElsewhere = signal(false);
