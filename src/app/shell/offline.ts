import { route } from '../router.ts';
import { changeSettings, settings } from '../state.ts';
import { keptOffline } from './KeptOffline.tsx';

/** Tells once that all files are kept: with the next screen that comes, so that nothing of the one that is there moves. */
export function tellKeptOffline(): void {
  if (settings.value.once.offline || !('serviceWorker' in navigator)) return;
  // It is ready once a worker has every file.
  void navigator.serviceWorker.ready.then(() => {
    const tell = () => {
      if (route.value.screen === 'round') return;
      removeEventListener('hashchange', tell);
      keptOffline.value = true;
      addEventListener('hashchange', () => (keptOffline.value = false), { once: true });
      changeSettings({ once: { ...settings.value.once, offline: true } });
    };
    addEventListener('hashchange', tell);
  });
}
