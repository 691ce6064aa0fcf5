import { changeStored, load } from './single.ts';

/** The cards to ask the teacher about, as they were saved: to be checked by the app. Null before. @throws StoreTrouble */
export function loadQuestions(): Promise<unknown> {
  return load('questions');
}

/** Changes them by what is on the device, and gives what they are then. @throws StoreTrouble */
export function changeQuestions<T>(by: (before: unknown) => T): Promise<T> {
  return changeStored('questions', by);
}
