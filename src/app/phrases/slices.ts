import { useEffect, useState } from 'preact/hooks';

/** How long a slice of work may keep the page waiting, ms. */
const SLICE = 10;

/** What has been made so far, and whether that is all. */
export interface Made<T> {
  readonly made: readonly T[];
  readonly done: boolean;
}

/**
 * Does work in slices, so that taps and sound are never kept waiting. It begins anew with other inputs and stops where
 * its screen goes.
 * @param work yields what it made, or undefined where it only can pause
 */
export function useSlices<T>(work: () => Iterator<T | undefined>, inputs: readonly unknown[]) {
  const [state, setState] = useState<Made<T>>({ made: [], done: false });
  useEffect(() => {
    const running = work();
    let made: readonly T[] = [];
    setState({ made, done: false });
    const slice = () => {
      const end = performance.now() + SLICE;
      const before = made.length;
      let step = running.next();
      while (!step.done) {
        if (step.value !== undefined) made = [...made, step.value];
        if (performance.now() > end) break;
        step = running.next();
      }
      if (step.done || made.length > before) setState({ made, done: step.done ?? false });
      if (!step.done) timer = setTimeout(slice);
    };
    let timer = setTimeout(slice);
    return () => clearTimeout(timer);
  }, inputs);
  return state;
}
