import { signal } from '../../signals/signal.ts';
import { loadQuestions } from '../../store/questions.ts';
import { reportingTrouble } from '../state.ts';

/** Items that the student wants to ask the teacher about; they travel in the report. */
export const questions = signal<readonly string[]>([]);

export async function restoreQuestions(): Promise<void> {
  questions.value = readQuestions(await reportingTrouble(loadQuestions()));
}

export function readQuestions(stored: unknown): readonly string[] {
  return Array.isArray(stored) ? stored.filter((id) => typeof id === 'string') : [];
}
