import { Workbox } from 'workbox-window';
import { route } from './router.ts';
import { taking, update } from './update.ts';

/** Makes the app work offline from this visit on, and looks for a newer version. */
export async function keepOffline(): Promise<void> {
  const workbox = new Workbox('./worker.js');
  let isControlled = navigator.serviceWorker.controller !== null;
  /** Whether it was this window that asked for the newer version. */
  let asked = false;
  taking.over = () => {
    asked = true;
    workbox.messageSkipWaiting();
  };
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
