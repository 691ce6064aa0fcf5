import { signal } from '../../signals/signal.ts';

/** Whether it is told now that the page is kept for offline. */
export const keptOffline = signal(false);

/** That the page needs no net any more, on the one screen where it is told. */
export function KeptOffline() {
  return keptOffline.value ? (
    <p class="notice" role="status">
      Kept for offline: from now on everything here works without the net.
    </p>
  ) : null;
}
