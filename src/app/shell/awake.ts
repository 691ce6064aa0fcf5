import { computed, effect } from '../../signals/signal.ts';
import { isHeard } from '../round/askable.ts';
import { shown } from '../round/session.ts';
import { route } from '../router.ts';
import { isSounding } from '../../sound/index.ts';

/** Whether the screen should stay on: something sounds, or a round with sound is asked. */
const isWanted = computed(
  () => isSounding.value || (route.value.screen === 'round' && shown.value !== null && isHeard()),
);

/** Keeps the screen on while that is wanted, where the browser can (Screen Wake Lock, w3.org/TR/screen-wake-lock). */
export function stayAwake(): void {
  const { wakeLock } = navigator as Partial<Navigator>;
  if (!wakeLock) return;
  const settle = settling(wakeLock);
  effect(() => void settle(isWanted.value));
  // A page that is hidden loses it, and may ask for it anew once it is seen.
  document.addEventListener('visibilitychange', () => void settle(isWanted.value));
}

/** Brings the lock to what is wanted last, one step after the other. */
function settling(wakeLock: WakeLock): (wanted: boolean) => Promise<void> {
  let held: WakeLockSentinel | null = null;
  let wanted = false;
  let isBusy = false;
  const needs = () => wanted && document.visibilityState === 'visible';
  const step = async () => {
    if (held && !held.released) {
      await held.release();
      held = null;
    } else held = await wakeLock.request('screen');
  };
  return async (now) => {
    wanted = now;
    if (isBusy) return;
    isBusy = true;
    try {
      while (needs() !== (held?.released === false)) await step();
    } catch {
      // Refused, as when the battery is low: the screen then goes dark when it does.
    } finally {
      isBusy = false;
    }
  };
}
