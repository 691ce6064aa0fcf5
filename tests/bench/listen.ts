/**
 * How well the judge hears: outside guitars, notes summed into phrases with known truth, every row of the bars, on as
 * many threads as there are cores. `npm run listen` asks 500 notes a row, `npm run listen -- full` 2,000;
 * `-- 100 ringing` a hundred, and only in the rows so named (parts of names, with commas); `-- full "" reported` only on the guitars that nothing was
 * tuned on. `-- fit 24` finds the weights of `src/listening/evidence.ts` anew, `-- octaves` those of octaves.
 */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import { REPORTED, TUNED_ON, type Source } from './listening/bank.ts';
import { freeScoreOf } from './listening/free.ts';
import { fit, fitOctaves } from './listening/fit.ts';
import { letThrough, printed, printedFree } from './listening/printed.ts';
import { LEARNT, LEARNT_OCTAVES, ROWS, scoreOf } from './listening/rows.ts';
import type { Score } from './listening/score.ts';

const SETS = { tuned: TUNED_ON, reported: REPORTED };
type Set = keyof typeof SETS;
const NOTES = { part: 500, full: 2000 };

const guitarsOf = (sources: readonly Source[]) => sources.flatMap((source) => source.load());

/** A thread: says what it loaded, then scores each row it is given. */
function work(set: Set, notes: number): void {
  const guitars = guitarsOf(SETS[set]);
  parentPort!.on('message', (row: number) => {
    parentPort!.postMessage({ row, score: scoreOf(guitars, row, notes) });
  });
}

/** Scores rows on all cores; `tell` gets them in order. */
function scored(
  set: Set,
  rows: readonly number[],
  notes: number,
  tell: (row: number, score: Score) => void,
): Promise<Score[]> {
  if (rows.length === 0) return Promise.resolve([]);
  const waiting = rows.slice();
  const done = new Map<number, Score>();
  let told = 0;
  return new Promise((resolve, reject) => {
    const workers = Array.from({ length: Math.min(availableParallelism(), rows.length) }, () => {
      const worker = new Worker(fileURLToPath(import.meta.url), { workerData: { set, notes } });
      worker.on('error', reject);
      worker.on('message', ({ row, score }: { row: number; score: Score }) => {
        done.set(row, score);
        for (; done.has(rows[told]!); told++) tell(rows[told]!, done.get(rows[told]!)!);
        if (waiting.length > 0) worker.postMessage(waiting.shift());
        if (told < rows.length) return;
        for (const other of workers) void other.terminate();
        resolve(rows.map((own) => done.get(own)!));
      });
      worker.postMessage(waiting.shift());
      return worker;
    });
  });
}

async function study(title: string, set: Set, notes: number, only: string): Promise<void> {
  console.log(`\n${title}`);
  // Rendered or fetched here once, so that no two threads do.
  for (const source of SETS[set]) {
    const own = source.load();
    const dropped = own.reduce((sum, guitar) => sum + guitar.dropped, 0);
    console.log(
      `${source.name} (${source.licence}): ${own.length} guitars, ${dropped} notes left out`,
    );
  }
  console.log(
    'row, notes played right, % of them accepted (95 % interval); mistakes: semitone octave other skipped extra again',
  );
  const named = (name: string) => only.split(',').some((part) => name.includes(part));
  const rows = ROWS.map((_, i) => i).filter((i) => named(ROWS[i]![0]));
  const scores = await scored(set, rows, notes, (row, score) =>
    console.log(printed(ROWS[row]![0], score)),
  );
  if (scores.length > 0) for (const line of letThrough(scores)) console.log(line);
  if (!named('free playing')) return;
  for (const ringing of ['damped', 'strings'] as const) {
    const name = `free playing, ${ringing === 'damped' ? 'damped' : 'ringing'}`;
    console.log(printedFree(name, freeScoreOf(guitarsOf(SETS[set]), ringing, notes / 10)));
  }
}

async function main(): Promise<void> {
  const [first = 'part', second = '', set = ''] = process.argv.slice(2);
  if (first === 'fit') return fit(guitarsOf(TUNED_ON), LEARNT, Number(second || 6));
  if (first === 'octaves')
    return fitOctaves(guitarsOf(TUNED_ON), LEARNT_OCTAVES, Number(second || 24));
  const notes = NOTES[first as keyof typeof NOTES] ?? Number(first);
  if (set !== 'reported') await study('Tuned on', 'tuned', notes, second);
  if (set !== 'tuned') await study('Reported only', 'reported', notes, second);
}

if (isMainThread) await main();
else work(workerData.set, workerData.notes);
