import { signal } from '@preact/signals';
import type { Workbox } from 'workbox-window';

/** Whether a newer version waits. */
export const updateReady = signal(false);

let workbox: Workbox | null = null;

/** Makes the app work offline from this visit on, and looks for a newer version. */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  const { Workbox } = await import('workbox-window');
  workbox = new Workbox('./worker.js');
  workbox.addEventListener('waiting', () => (updateReady.value = true));
  await workbox.register();
}

/** Lets the newer version take over and begins with it. */
export function takeUpdate(): void {
  workbox?.addEventListener('controlling', () => location.reload());
  workbox?.messageSkipWaiting();
}
