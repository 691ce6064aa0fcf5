import { change, load } from './single.ts';

/** What was sure of the last card of each figure, as it was saved: to be checked by the app. Null before. @throws StoreTrouble */
export function loadTimings(): Promise<unknown> {
  return load('timings');
}

/** Saves what is known of one figure; the others stay as they are on the device. @throws StoreTrouble */
export async function saveTiming(figure: string, timing: object): Promise<void> {
  await change('timings', (before) => ({ ...(before as object | null), [figure]: timing }));
}
