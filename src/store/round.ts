import { load, save } from './single.ts';

/** The round in progress, as it was saved: to be checked by the app. Null where there is none. @throws StoreTrouble */
export function loadRound(): Promise<unknown> {
  return load('round');
}

/** Null where no round is in progress. @throws StoreTrouble */
export function saveRound(round: unknown): Promise<void> {
  return save('round', round);
}
