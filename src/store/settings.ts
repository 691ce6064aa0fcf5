import { changeStored, load } from './single.ts';

/** What the student has chosen, as it was saved: to be checked by the app. Null before. @throws StoreTrouble */
export function loadSettings(): Promise<unknown> {
  return load('settings');
}

/** Saves some of them; the others stay as they are on the device. @throws StoreTrouble */
export async function saveSettings(some: object): Promise<void> {
  await changeStored('settings', (before) => ({ ...(before as object | null), ...some }));
}
