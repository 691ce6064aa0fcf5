/**
 * Whether there are lessons on this device, as the page can see it before anything is drawn: the database answers a
 * moment later. `index.html` looks at it too. Where it is missing or refused the page begins as at a first visit.
 */
const KEY = 'skipwise';

export function hasLessons(): boolean {
  try {
    return localStorage.getItem(KEY) !== null;
  } catch {
    return false;
  }
}

export function noteLessons(some: boolean): void {
  try {
    if (some) localStorage.setItem(KEY, 'lessons');
    else localStorage.removeItem(KEY);
  } catch {
    // Refused, as in a private window: nothing is kept there anyway.
  }
}
