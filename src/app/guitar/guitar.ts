import type { Guitar } from '../../cards/kind.ts';
import { signal } from '../../signals/signal.ts';

/** The guitar, and a voice that asks. */
export interface Lent extends Guitar {
  /** Says a question as it is spoken; resolves when it was said, or is clear that it cannot be. */
  ask(question: string): Promise<void>;
}

/** What cards are lent; null where no guitar is in hand, or the phone does not hear it. `inHand.ts` alone sets it. */
export const guitar = signal<Lent | null>(null);
