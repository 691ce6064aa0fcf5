import { play, type Playing } from '../../sound/index.ts';

/** How long a card is read before it is counted in, in ms: the first time, and again. */
export const READING = [2000, 600];
/** A bar of clicks; behind the last one so many beats are left when listening begins, for whoever comes in early. */
const BAR = 4;
const LEFT = 0.7;

interface Counting {
  /** Told of every beat, from 0. */
  count(beat: number): void;
  sounded(playing: Playing): void;
  /** The last click is over: in so many seconds the first note is due. */
  over(left: number): void;
}

/** Clicks one bar. @returns what stops it */
export function countedIn(
  tempo: number,
  wait: number,
  { count, sounded, over }: Counting,
): () => void {
  let playing: Playing | undefined;
  let stopped = false;
  const timer = setTimeout(() => {
    const notes = Array.from({ length: BAR }, (_, at) => ({ midi: 60, at, length: 1 - LEFT }));
    playing = play({ tempo, notes }, { muted: true, click: true, onNote: count });
    sounded(playing);
    void playing.done.then(() => {
      if (!stopped) over((LEFT * 60) / tempo);
    });
  }, wait);
  return () => {
    stopped = true;
    clearTimeout(timer);
    playing?.stop();
  };
}
