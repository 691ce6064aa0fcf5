import { signal } from '../../../signals/signal.ts';
import { PLAIN_DRAFT, type Draft } from '../../../making/draft.ts';

/** The lesson in the form. `kept.ts` keeps it on the device. */
export const draft = signal<Draft>(PLAIN_DRAFT);

/** Changes some choices of the lesson in the form. */
export function change(part: Partial<Draft>): void {
  draft.value = { ...draft.value, ...part };
}
