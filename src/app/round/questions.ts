import { signal } from '../../signals/signal.ts';
import { changeQuestions, loadQuestions } from '../../store/questions.ts';
import { reportingTrouble } from '../state.ts';

/** Items that the student wants to ask the teacher about; they travel in the report. */
export const questions = signal<readonly string[]>([]);

/** More than these no lesson answers. */
const MOST = 20;

export async function restoreQuestions(): Promise<void> {
  questions.value = read(await reportingTrouble(loadQuestions()));
}

/** Marks an item to be asked about, or takes the mark away. */
export function toggleQuestion(item: string): void {
  const had = questions.value.includes(item);
  const toggled = (before: readonly string[]) => {
    const others = before.filter((id) => id !== item);
    return had ? others : [...others, item].slice(-MOST);
  };
  questions.value = toggled(questions.value);
  void reportingTrouble(changeQuestions((stored) => toggled(read(stored))));
}

function read(stored: unknown): readonly string[] {
  return Array.isArray(stored) ? stored.filter((id) => typeof id === 'string') : [];
}
