/** Jobs done on as many threads as the machine has cores. */
import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';

/**
 * Does all jobs, each wherever a thread is free; the results in the jobs' order.
 *
 * @param file the script that the threads run: it calls `serve`
 */
export async function doneAll<Job, Done>(jobs: readonly Job[], file: URL): Promise<Done[]> {
  const done: Done[] = [];
  let next = 0;
  const threads = Array.from({ length: availableParallelism() }, async () => {
    const worker = new Worker(file);
    while (next < jobs.length) {
      const k = next++;
      const answered = once(worker, 'message');
      worker.postMessage(jobs[k]);
      done[k] = ((await answered) as [Done])[0];
    }
    await worker.terminate();
  });
  await Promise.all(threads);
  return done;
}

/** Does the jobs that are sent to this thread; false in the main one, which has none. */
export function serve<Job, Done>(doJob: (job: Job) => Done): boolean {
  if (isMainThread) return false;
  parentPort!.on('message', (job: Job) => parentPort!.postMessage(doJob(job)));
  return true;
}
