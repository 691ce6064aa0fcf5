/** A first card on the screen, or so long after the page has come, ms: then what it did without may be fetched. */
const QUIET = 1000;

let begin: () => void;

/** When what the first card does without is fetched: the other kinds of card, sound, the worker that keeps the app. */
export const later = new Promise<void>((resolve) => (begin = resolve));

/** A card is on the screen. */
export function cardShown(): void {
  // Once it is painted.
  requestAnimationFrame(() => setTimeout(begin));
}

/** The page has come. Where its files are kept on the device there is nothing to wait for. */
export function pageLoaded(): void {
  const isKept = Boolean(navigator.serviceWorker?.controller);
  setTimeout(begin, isKept ? 0 : QUIET);
}
