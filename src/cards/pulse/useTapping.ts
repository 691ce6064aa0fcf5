import { useEffect, useRef, useState } from 'preact/hooks';
import { play, type Playing } from '../../sound/index.ts';
import type { Guitar } from '../kind.ts';
import type { PulseCard } from './ask.ts';
import { countAloud } from './aloud.ts';
import { clicked } from './clicks.ts';
import { tapsText, type Made } from './judge.ts';

/** `held up` where the sound stood still, or the page was left, and nothing can be said of the taps. */
export type Phase = 'ready' | 'counting' | 'keeping' | 'handed in' | 'held up';

export interface Tapping {
  readonly phase: Phase;
  /** Whether taps are taken: while the bar is counted, and in the figure. */
  readonly isOn: boolean;
  /** The click that is heard now, by its index: the words of the count-in first. */
  readonly lit: number | null;
  readonly taps: number;
  begin(): void;
  /** Lets the taps go. */
  stop(): void;
  /** The same where it was not the student who stopped. */
  holdUp(): void;
  /** @param at the event's own time, in ms */
  tap(at: number): void;
}

interface TappingOptions {
  card: PulseCard;
  /** Its strings, struck, are taps too; null where none is heard. */
  guitar: Guitar | null;
  sounded(playing: Playing): void;
  /** Told of the answer once the figure is over and nobody taps any more. */
  over(answer: string, taps: number): void;
}

/** How long a click is seen, ms. */
const SEEN = 110;
/** After the end taps are waited for: so many steps, and so many ms at least: a stroke is told of a moment late. */
const WAIT = { steps: 2, least: 600 };
/** By so many ms the clock of sound may be off against the page's before the taps mean nothing. */
const HELD_UP = 50;
/** So many times the taps asked for end it. */
const TOO_MANY = 1.25;

/** Counts in, sounds the click and takes the taps down, on the clock of the sound. */
export function useTapping({ card, guitar, sounded, over }: TappingOptions): Tapping {
  const [phase, setPhase] = useState<Phase>('ready');
  const [lit, setLit] = useState<number | null>(null);
  const [taps, setTaps] = useState(0);
  const run = useRef<Run | null>(null);
  const made = useRef<Made>('tapped');
  const end = (as: Phase) => {
    run.current?.stop();
    run.current = null;
    setLit(null);
    setPhase(as);
  };
  useEffect(() => {
    setPhase('ready');
    setTaps(0);
    return () => {
      run.current?.stop();
      run.current = null;
    };
  }, [card]);
  const begin = () => {
    setTaps(0);
    made.current = 'tapped';
    setPhase('counting');
    const aloud = countAloud(card.plan);
    run.current = begun(card, {
      clicked(index) {
        setLit(index);
        const word = aloud[index];
        if (word) void guitar?.say?.(word);
        if (index >= card.plan.countIn.length - 1) setPhase('keeping');
      },
      unseen: () => setLit(null),
      over(times) {
        end(times ? 'handed in' : 'held up');
        if (times) over(tapsText(times, made.current), 1);
      },
    });
    sounded(run.current.playing);
  };
  const tap = (at: number) => run.current && setTaps(run.current.tap(at));
  const isOn = phase === 'counting' || phase === 'keeping';
  useStrikes(isOn ? guitar : null, (at, as) => {
    // The voice that counts in is heard too.
    if (run.current?.isCountedIn(at)) return;
    made.current = as;
    tap(at);
  });
  return {
    phase,
    isOn,
    lit,
    taps,
    begin,
    stop: () => end('ready'),
    holdUp: () => end('held up'),
    tap,
  };
}

/** Tells of every stroke on a guitar that is heard, and whether its time is measured. */
function useStrikes(guitar: Guitar | null, struck: (at: number, as: Made) => void): void {
  useEffect(() => {
    const task = guitar?.strikes((at) => struck(at, guitar.isMeasured ? 'measured' : 'struck'));
    return () => task?.stop();
  }, [guitar !== null]);
}

/** A figure that is being tapped. */
interface Run {
  readonly playing: Playing;
  /** Takes a tap down; gives how many there are. */
  tap(at: number): number;
  /** Whether a time is still the count's, more than half a step before the first note. */
  isCountedIn(at: number): boolean;
  stop(): void;
}

interface Watcher {
  clicked(index: number): void;
  unseen(): void;
  /** @param times seconds on the plan's clock; null where the clocks went apart */
  over(times: readonly number[] | null): void;
}

function begun({ plan }: PulseCard, watcher: Watcher): Run {
  const { figure, tempo, countIn, slots } = plan;
  const times: number[] = [];
  const wait = Math.max(WAIT.least, (1000 * WAIT.steps * 60) / tempo / figure.division);
  const timers: Partial<Record<'seen' | 'over', ReturnType<typeof setTimeout>>> = {};
  let [first, isOver] = [null as number | null, false];
  const zero = () => playing.heardAt(figure.bar);
  const finish = () => {
    const last = zero();
    const known = first !== null && last !== null && Math.abs(last - first) < HELD_UP;
    // Both are as good: their mean is better than either.
    watcher.over(known ? times.map((at) => (at - (first! + last) / 2) / 1000) : null);
  };
  const finishSoon = () => {
    clearTimeout(timers.over);
    timers.over = setTimeout(finish, wait);
  };
  const playing = play(
    { tempo, notes: [] },
    {
      ...clicked(plan),
      click: true,
      onClick(index) {
        if (index >= countIn.length) first ??= zero();
        watcher.clicked(index);
        clearTimeout(timers.seen);
        timers.seen = setTimeout(watcher.unseen, SEEN);
      },
      onEnd() {
        isOver = true;
        finishSoon();
      },
    },
  );
  return {
    playing,
    tap(at) {
      times.push(at);
      if (times.length > TOO_MANY * slots.length) finish();
      else if (isOver) finishSoon();
      return times.length;
    },
    isCountedIn(at) {
      const from = zero();
      return from !== null && at < from - (500 * 60) / tempo / figure.division;
    },
    stop() {
      for (const timer of Object.values(timers)) clearTimeout(timer);
      playing.stop();
    },
  };
}
