import { changeStored, load } from './single.ts';

/** What was sure of the last card of one figure. What it holds is for the app to say. */
export interface StoredTiming {
  /** As `timingId` names it. */
  readonly figure: string;
  /** JSON. */
  readonly timing: unknown;
}

/** What was sure of the last card of each figure, as it was saved: to be checked by the app. Null before. @throws StoreTrouble */
export function loadTimings(): Promise<unknown> {
  return load('timings');
}

/** Saves what is known of one figure; the others stay as they are on the device. @throws StoreTrouble */
export async function saveTiming(figure: string, timing: object): Promise<void> {
  await changeStored('timings', (before) => ({ ...(before as object | null), [figure]: timing }));
}

/** All of them. @throws StoreTrouble */
export async function listTimings(): Promise<StoredTiming[]> {
  const stored = Object.entries((await loadTimings()) ?? {});
  return stored.map(([figure, timing]) => ({ figure, timing: timing as unknown }));
}

/**
 * Takes in those of a backup whose figure is not known here: what this phone saw last it saw itself. Gives how many were
 * taken. @throws StoreTrouble
 */
export async function takeTimings(timings: readonly StoredTiming[]): Promise<number> {
  let taken: readonly StoredTiming[] = [];
  if (timings.length === 0) return 0;
  await changeStored('timings', (before) => {
    const known = { ...(before as object | null) };
    taken = timings.filter(({ figure }) => !Object.hasOwn(known, figure));
    return {
      ...known,
      ...Object.fromEntries(taken.map(({ figure, timing }) => [figure, timing])),
    };
  });
  return taken.length;
}
