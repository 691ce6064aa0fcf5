/** Values that many screens share: whoever reads one is told when it changes. In components see `components.ts`. */

/** Who reads signals, and is told of each change to what was read last. */
export class Reader {
  /** Of each signal that was read, its readers. */
  readonly #read = new Set<Set<Reader>>();

  constructor(readonly changed: () => void) {}

  /** What is read from here on is read by this, in place of all that it read before; what it gives ends that. */
  begin(): () => void {
    this.forget();
    return readAs(this);
  }

  reads(readers: Set<Reader>): void {
    readers.add(this);
    this.#read.add(readers);
  }

  /** Is told of nothing any more. */
  forget(): void {
    for (const readers of this.#read) readers.delete(this);
    this.#read.clear();
  }
}

let reading: Reader | null = null;

/** Who reads from here on; what it gives ends that. */
function readAs(reader: Reader | null): () => void {
  const before = reading;
  reading = reader;
  return () => void (reading = before);
}

export interface ReadonlySignal<T> {
  readonly value: T;
  /** The value, for who need not be told when it changes. */
  peek(): T;
}

class Signal<T> implements ReadonlySignal<T> {
  #value: T;
  readonly #readers = new Set<Reader>();

  constructor(value: T) {
    this.#value = value;
  }

  get value(): T {
    reading?.reads(this.#readers);
    return this.#value;
  }

  set value(value: T) {
    if (value === this.#value) return;
    this.#value = value;
    // Whoever is told reads it anew.
    const before = [...this.#readers];
    for (const reader of before) {
      // One that was told earlier may have ended it.
      if (this.#readers.has(reader)) reader.changed();
    }
  }

  peek(): T {
    return this.#value;
  }
}

export type { Signal };

export function signal<T>(value: T): Signal<T> {
  return new Signal(value);
}

/** What follows from signals: reckoned whenever it is read. */
export function computed<T>(reckon: () => T): ReadonlySignal<T> {
  return {
    get value() {
      return reckon();
    },
    peek: () => untracked(reckon),
  };
}

/** Does something now, and again whenever a signal changes that it read. */
export function effect(run: () => void): void {
  const reader = new Reader(() => {
    const end = reader.begin();
    try {
      run();
    } finally {
      end();
    }
  });
  reader.changed();
}

/** The same, of which nobody is told when it changes. */
export function untracked<T>(read: () => T): T {
  const end = readAs(null);
  try {
    return read();
  } finally {
    end();
  }
}
