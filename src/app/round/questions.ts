import { signal } from '@preact/signals';
import { loadQuestions, saveQuestions } from '../../store/questions.ts';
import { tell } from '../state.ts';

/** Items that the student wants to ask the teacher about; they travel in the report. */
export const questions = signal<readonly string[]>([]);

/** More than these no lesson answers. */
const MOST = 20;

export async function restoreQuestions(): Promise<void> {
  const stored = await tell(loadQuestions());
  if (Array.isArray(stored)) questions.value = stored.filter((id) => typeof id === 'string');
}

/** Marks an item to be asked about, or takes the mark away. */
export function toggleQuestion(item: string): void {
  const others = questions.value.filter((id) => id !== item);
  const had = others.length < questions.value.length;
  questions.value = had ? others : [...others, item].slice(-MOST);
  void tell(saveQuestions(questions.value));
}
