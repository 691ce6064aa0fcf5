import { signal } from '../../../signals/signal.ts';
import type { MadePhrase } from '../../../making/draft.ts';
import type { Entry } from '../../../making/entry.ts';

/** What was discarded last, and the lesson's phrases then: it can be taken back as long as they are the same. */
export const discarded = signal<{ entry: Entry; phrases: readonly MadePhrase[] } | null>(null);
