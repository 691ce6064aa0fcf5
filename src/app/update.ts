import { signal } from '@preact/signals';
import type { Workbox } from 'workbox-window';
import { route } from './router.ts';

/** Whether a newer version waits to be taken, or another window has taken it; null while there is none. */
export const update = signal<'waits' | 'taken' | null>(null);

let workbox: Workbox | null = null;
/** Whether it was this window that asked for the newer version. */
let asked = false;

/** Makes the app work offline from this visit on, and looks for a newer version. */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  const { Workbox } = await import('workbox-window');
  let isControlled = navigator.serviceWorker.controller !== null;
  workbox = new Workbox('./worker.js');
  workbox.addEventListener('waiting', () => (update.value = 'waits'));
  workbox.addEventListener('controlling', () => {
    if (asked) location.reload();
    else if (isControlled) update.value = 'taken';
    isControlled = true;
    goOnIfIdle();
  });
  addEventListener('hashchange', goOnIfIdle);
  await mend(await workbox.register());
}

/** Has what the browser took of the files fetched anew; those of a newer version come with it. */
async function mend(registration: ServiceWorkerRegistration | undefined): Promise<void> {
  if (!registration?.active || !navigator.onLine) return;
  await registration.update();
  if (!registration.installing && !registration.waiting) {
    registration.active.postMessage({ type: 'MEND' });
  }
}

/** Begins with the version that another window has taken, unless a round is open here or something is being typed. */
function goOnIfIdle(): void {
  const isTyping = document.activeElement?.matches('input, textarea, select') ?? false;
  if (update.value === 'taken' && route.value.screen !== 'round' && !isTyping) location.reload();
}

/** Begins with the newer version, which takes over first where it still waits. */
export function takeUpdate(): void {
  asked = true;
  if (update.value === 'taken') location.reload();
  else workbox?.messageSkipWaiting();
}
