/** Work that pauses now and then, wherever it yields, and ends with a result. */
export type Incremental<T> = Generator<undefined, T>;

/** The result of such work, done without a pause. */
export function finished<T>(work: Incremental<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
