/**
 * Which window asks the cards of a round: two that ask the same ones would log each twice. The one that holds a lock of
 * the browser's leads; any other says so and can take the lock over. Where a browser has no locks each window leads.
 */
import { useLayoutEffect, useState } from 'preact/hooks';

const LOCK = 'skipwise round';

/** Where the round is asked; null until the browser has said. */
type Leading = 'here' | 'elsewhere' | null;

interface Lead {
  readonly leading: Leading;
  /** Asks the round here; the window that asked it before says that it is asked elsewhere. */
  takeOver(): void;
}

/** Leads while the screen that uses it is shown, as soon as no other window does. */
export function useLead(): Lead {
  const [leading, setLeading] = useState<Leading>(null);
  const [held] = useState(() => new Held(setLeading));
  // Before anything is painted: the card waits for it.
  useLayoutEffect(() => {
    held.ask();
    return () => held.letGo();
  }, [held]);
  return { leading, takeOver: () => held.takeOver() };
}

/** The lock as one screen holds it or waits for it. */
class Held {
  /** Ends what waits, and lets go of what is held. */
  #ending = new AbortController();

  constructor(private readonly tell: (leading: Leading) => void) {}

  /** Holds the lock as soon as it is free, at once or when the other window is closed or has left its round. */
  ask(): void {
    const locks = navigator.locks as LockManager | undefined;
    if (!locks) {
      this.tell('here');
      return;
    }
    const { signal } = this.#ending;
    // Asked first without waiting: only the answer says that another window holds it.
    void locks
      .request(LOCK, { ifAvailable: true }, (lock) => {
        if (lock) return this.#hold(signal);
        if (signal.aborted) return undefined;
        this.tell('elsewhere');
        return this.#request({ signal });
      })
      .catch((error: unknown) => this.#lost(error, signal));
  }

  takeOver(): void {
    this.letGo();
    this.#ending = new AbortController();
    this.#request({ steal: true });
  }

  letGo(): void {
    this.#ending.abort();
  }

  #request(options: LockOptions): void {
    const { signal } = this.#ending;
    void navigator.locks
      .request(LOCK, options, () => this.#hold(signal))
      .catch((error: unknown) => this.#lost(error, signal));
  }

  /** Keeps the lock until it is let go. */
  #hold(signal: AbortSignal): Promise<void> {
    if (signal.aborted) return Promise.resolve();
    this.tell('here');
    return new Promise((resolve) => {
      signal.addEventListener('abort', () => resolve(), { once: true });
    });
  }

  /** Another window took the lock over, or the wait was ended here, or the browser refuses locks: as without them. */
  #lost(error: unknown, signal: AbortSignal): void {
    if (signal.aborted) return;
    if (!(error instanceof DOMException)) throw error;
    if (error.name !== 'AbortError') return this.tell('here');
    this.tell('elsewhere');
    this.#request({ signal });
  }
}
