import { useEffect, useState } from 'preact/hooks';

/** How long a slice of work may keep the page waiting, ms. */
const SLICE = 6;

/** What has been made so far, and whether that is all. */
interface Made<T> {
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
      let step = running.next();
      while (!step.done && step.value === undefined && performance.now() < end)
        step = running.next();
      const done = step.done ?? false;
      const value = step.done ? undefined : step.value;
      timer = setTimeout(done || value !== undefined ? () => show(value, done) : slice);
    };
    // What was made is drawn in a slice of its own: that takes as long as making it.
    const show = (value: T | undefined, done: boolean) => {
      if (value !== undefined) made = [...made, value];
      setState({ made, done });
      if (!done) timer = setTimeout(slice);
    };
    let timer = setTimeout(slice);
    return () => clearTimeout(timer);
  }, inputs);
  return state;
}
