import type { Incremental } from '../theory/incremental.ts';

/** How long work may keep the page waiting, ms: half a frame. */
const SLICE = 8;

/** The result of work that is done in slices, so that taps and sound are never kept waiting. */
export async function inSlices<T>(work: Incremental<T>): Promise<T> {
  let end = performance.now() + SLICE;
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() < end) continue;
    await nextTurn();
    end = performance.now() + SLICE;
  }
}

/** After whatever waits for the page now: a timer would wait for longer. */
function nextTurn(): Promise<void> {
  const { port1, port2 } = new MessageChannel();
  port2.postMessage(null);
  return new Promise((resolve) => {
    port1.addEventListener('message', () => resolve(port1.close()));
    port1.start();
  });
}
