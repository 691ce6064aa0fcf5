/** So long after the page has come, or after the first tap, ms: what is still to come is not in the way. */
const QUIET = 1500;

let begin: () => void;
let timer: ReturnType<typeof setTimeout> | undefined;

/** When what the first card does without is fetched: the other kinds of card, sound, the worker that keeps the app. */
export const later = new Promise<void>((resolve) => (begin = resolve));

/** Lets what is drawn be seen, and what is tapped be taken, before the work goes on. */
export const pause = () => new Promise<void>((resolve) => setTimeout(resolve));

/** A card that can be answered is on the screen. */
export function cardShown(): void {
  // Once it is painted.
  requestAnimationFrame(() => setTimeout(begin));
}

/** The page has come. Where its files are kept on the device there is nothing to wait for. */
export function pageLoaded(): void {
  if (navigator.serviceWorker?.controller) return begin();
  beQuiet();
  // Once: who goes on tapping is not kept waiting for sound.
  addEventListener('click', beQuiet, { once: true });
}

function beQuiet(): void {
  clearTimeout(timer);
  timer = setTimeout(begin, QUIET);
}
