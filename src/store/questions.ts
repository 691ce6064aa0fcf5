import { load, save } from './document.ts';

/** The cards marked to ask the teacher about, as they were saved: to be checked by the app. Null before. @throws StoreTrouble */
export function loadQuestions(): Promise<unknown> {
  return load('questions');
}

/** @throws StoreTrouble */
export function saveQuestions(questions: unknown): Promise<void> {
  return save('questions', questions);
}
