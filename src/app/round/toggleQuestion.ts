import { changeQuestions } from '../../store/questions.ts';
import { reportingTrouble } from '../state.ts';
import { questions, readQuestions } from './questions.ts';

/** More than these no lesson answers. */
const MOST = 20;

/** Marks an item to be asked about, or takes the mark away. */
export function toggleQuestion(item: string): void {
  const had = questions.value.includes(item);
  const toggled = (before: readonly string[]) => {
    const others = before.filter((id) => id !== item);
    return had ? others : [...others, item].slice(-MOST);
  };
  questions.value = toggled(questions.value);
  void reportingTrouble(changeQuestions((stored) => toggled(readQuestions(stored))));
}
