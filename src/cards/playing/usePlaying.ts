import { useEffect, useRef, useState } from 'preact/hooks';
import type { Performance, Task } from '../../listening/listening.ts';
import { toNumber } from '../../theory/rhythm.ts';
import type { FaceProps, Guitar } from '../kind.ts';
import { answerOf } from './answer.ts';
import type { PlayingCard } from './card.ts';
import { countedIn, READING } from './countIn.ts';
import { isDecided, wasPlayed } from './judge.ts';

interface PlayingOptions extends Pick<
  FaceProps<PlayingCard>,
  'card' | 'verdict' | 'guitar' | 'answer' | 'sounded'
> {
  /** Whether nothing sounds that the microphone would hear. */
  quiet: boolean;
  /** Whether a bar is counted before it. */
  countIn: boolean;
}

/** A line being played. */
export interface Follow {
  /** `untold`: twice it could not be told what was played, and what comes next is asked. */
  readonly state: 'waiting' | 'counting' | 'listening' | 'untold' | 'answered';
  /** The beat of the count-in that is heard, from 0. */
  readonly count: number | null;
  /** What could be told so far of what was played, where it was not enough. */
  readonly told: 'in part' | 'nothing' | null;
  /** What is settled. */
  readonly performance: Performance | null;
  /** Notes told right at once, by their index. */
  readonly lit: ReadonlySet<number>;
  /** Begins again from the first note, or the count. */
  again(): void;
}

const NONE: ReadonlySet<number> = new Set();

/** Follows a line that is played, and hands in what was heard of it; what cannot be told is asked for once more. */
export function usePlaying(options: PlayingOptions): Follow {
  const { card, verdict, guitar, quiet, countIn } = options;
  const turns = useTurns();
  const { state, setState, attempt, silences } = turns;
  const [count, setCount] = useState<number | null>(null);
  const counted = useRef(-1);
  const { performance, lit, follower, show, clear } = useHeard();
  const isOpen = guitar !== null && quiet && !verdict && state !== 'answered' && state !== 'untold';
  const asked = card.notes.map(({ midi }) => midi);

  const onOver = (heard: Performance) => {
    show(heard);
    const isAnswer = turns.over(heard);
    if (isAnswer) options.answer(answerOf(heard, asked, card.tempo !== null), 0);
  };
  const listen = (by: Guitar, first?: number) => {
    setState('listening');
    const due = first === undefined ? {} : { due: dueOf(card, first) };
    return by.follow({ notes: asked, order: 'given', ...due }, { ...follower, onOver });
  };
  useEffect(() => {
    if (!guitar || !isOpen) return;
    clear();
    let task: Task | undefined;
    const counts = countIn && counted.current !== attempt;
    counted.current = attempt;
    if (counts) setState('counting');
    else task = listen(guitar);
    const over = (left: number) => {
      setCount(null);
      task = listen(guitar, guitar.now() + left);
    };
    const { sounded } = options;
    const counting = { count: setCount, sounded, over };
    const stop = counts
      ? countedIn(card.tempo!, READING[Math.min(attempt, 1)]!, counting)
      : undefined;
    return () => {
      stop?.();
      setCount(null);
      task?.stop();
    };
  }, [guitar !== null, isOpen, attempt, silences]);
  const { again, told } = turns;
  return { state, count, told, performance, lit, again };
}

/** How often it was tried, and what came of it. */
function useTurns() {
  const [state, setState] = useState<Follow['state']>('waiting');
  const [attempt, setAttempt] = useState(0);
  const [untold, setUntold] = useState(0);
  const [silences, setSilences] = useState(0);
  const again = () => {
    setState('waiting');
    setAttempt(attempt + 1);
  };
  /** @returns whether it is an answer */
  const over = (heard: Performance): boolean => {
    if (!wasPlayed(heard)) setSilences(silences + 1);
    else if (isDecided(heard)) setState('answered');
    else if (untold > 0) setState('untold');
    else {
      setUntold(1);
      setAttempt(attempt + 1);
    }
    return wasPlayed(heard) && isDecided(heard);
  };
  const told: Follow['told'] = untold > 0 ? 'in part' : silences > 0 ? 'nothing' : null;
  return { state, setState, attempt, silences, told, again, over };
}

/** What is heard as it is told: what is settled, and what is right at once. */
function useHeard() {
  const [performance, setPerformance] = useState<Performance | null>(null);
  const [lit, setLit] = useState(NONE);
  // Whoever begins again has nothing behind them.
  const show = (now: Performance) => {
    setPerformance((before) => {
      if (now.restarts !== (before?.restarts ?? 0)) setLit(NONE);
      return now;
    });
  };
  return {
    performance,
    lit,
    show,
    clear() {
      setPerformance(null);
      setLit(NONE);
    },
    follower: {
      onRight: (index: number) => setLit((before) => new Set([...before, index])),
      onSettled: show,
    },
  };
}

/** When each note is due, in seconds, the first one at a time. */
function dueOf({ notes, tempo }: PlayingCard, first: number): number[] {
  const begins = toNumber(notes[0]!.at);
  return notes.map(({ at }) => first + ((toNumber(at) - begins) * 60) / tempo!);
}
