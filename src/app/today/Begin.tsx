import { useState } from 'preact/hooks';
import { nextCard } from '../../practice/next.ts';
import { canGoOn } from '../../practice/round.ts';
import { unlock } from '../../sound/index.ts';
import { go } from '../router.ts';
import { askable } from '../round/askable.ts';
import { beginRound, round, takeUpGuitar } from '../round/session.ts';
import { timeLeft } from '../round/timeLeft.ts';
import { memory, type Lesson } from '../state.ts';
import { type Length, lengthsOf } from './lengths.ts';

interface BeginProps {
  lesson: Lesson;
  /** Minutes, unless another length is chosen. */
  usual: number;
  /** Whether it is enough for today: then nothing is gone on with, and nothing presses. */
  isDone: boolean;
  /** Told of the minutes that were chosen; null where the length is not one of minutes. */
  choose(minutes: number | null): void;
}

/** One button that begins, and how long: a step shorter on its left, a step longer on its right. */
export function Begin({ lesson: { id }, usual, isDone, choose }: BeginProps) {
  const goesOn = !isDone && hasMore(id);
  const [chosen, setChosen] = useState<Length | null>(null);
  const length = chosen ?? (goesOn ? 'go on' : usual);
  const lengths = lengthsOf(goesOn);
  const step = (by: number) => {
    const next = lengths[lengths.indexOf(length) + by]!;
    setChosen(next);
    choose(typeof next === 'number' ? next : null);
  };
  const start = async () => {
    unlock();
    await (length === 'go on' ? takeUpGuitar(id) : beginRound(id, length));
    go('round');
  };
  return (
    <div class="last begin" role="group" aria-label="A round">
      <div>
        <Step words="Shorter" isEnd={length === lengths[0]} step={() => step(-1)} />
        <button
          type="button"
          class={`button ${isDone ? '' : 'main'}`}
          data-do="start"
          onClick={() => void start()}
        >
          <span aria-live="polite">{wordsOf(length)}</span>
        </button>
        <Step words="Longer" isEnd={length === lengths.at(-1)} step={() => step(1)} />
      </div>
    </div>
  );
}

/** Whether a round on the lesson was begun today and has a card left. */
function hasMore(lesson: string): boolean {
  const [current, now] = [round.value, Date.now()];
  return (
    current?.deck === lesson &&
    canGoOn(current, now, -new Date(now).getTimezoneOffset()) &&
    nextCard(current, askable(lesson), memory.value.of, now) !== null
  );
}

function wordsOf(length: Length): string {
  if (length === 'go on') return `Go on: ${timeLeft(round.value!)}`;
  return length === 'enough' ? 'Practise until enough' : `Practise ${length} minutes`;
}

interface StepProps {
  words: 'Shorter' | 'Longer';
  /** Whether there is nothing beyond. */
  isEnd: boolean;
  step(): void;
}

function Step({ words, isEnd, step }: StepProps) {
  return (
    <button
      type="button"
      class="button step-by"
      aria-label={words}
      aria-disabled={isEnd}
      onClick={() => isEnd || step()}
    >
      {words === 'Shorter' ? '−' : '+'}
    </button>
  );
}
