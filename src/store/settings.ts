import { load, save } from './document.ts';

/** What the student has chosen, as it was saved: to be checked by the app. Null before. @throws StoreTrouble */
export function loadSettings(): Promise<unknown> {
  return load('settings');
}

/** @throws StoreTrouble */
export function saveSettings(settings: unknown): Promise<void> {
  return save('settings', settings);
}
