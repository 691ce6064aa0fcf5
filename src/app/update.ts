import { signal } from '../signals/signal.ts';

/** Whether a newer version waits to be taken, or another window has taken it; null while there is none. */
export const update = signal<'waits' | 'taken' | null>(null);

/** Has the newer version that waits take over: known to what looks for newer ones. */
export const taking: { over: () => void } = { over() {} };

/** Begins with the newer version, which takes over first where it still waits. */
export function takeUpdate(): void {
  if (update.value === 'taken') location.reload();
  else taking.over();
}
