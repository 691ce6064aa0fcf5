import { signal } from '../signals/signal.ts';

/** What Chromium's browsers hand over where the page can be put on the home screen (Web Application Manifest incubations). */
interface InstallPrompt extends Event {
  /** Opens the browser's own question. */
  prompt(): Promise<unknown>;
}

/** The platform's offer to put the page on the home screen; null where there is none, or it has been used. */
export const install = signal<InstallPrompt | null>(null);

/** Listens for that offer, which comes once, soon after the page. */
export function awaitInstall(): void {
  addEventListener('beforeinstallprompt', (event) => {
    // Said in words of ours, and when it does not stand in the way.
    event.preventDefault();
    install.value = event as InstallPrompt;
  });
  addEventListener('appinstalled', () => (install.value = null));
}
