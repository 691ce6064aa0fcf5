/** The delay of sound out and in, taken out of what is asked of the ear and of what it tells. */
import type {
  Expected,
  Follower,
  FreeListener,
  FreeNote,
  Performance,
} from '../../listening/listening.ts';

/** What is expected at the microphone: later than it is due by the delay, seconds. */
export function delayed<E extends Pick<Expected, 'due'>>(expected: E, delay: number): E {
  return expected.due ? { ...expected, due: expected.due.map((time) => time + delay) } : expected;
}

/** A follower that is told when things were played, not when they came in. */
export function undelayed(follower: Follower, delay: number): Follower {
  const { onRight, onSettled, onOver } = follower;
  return {
    ...(onRight && { onRight: (index, time) => onRight(index, time - delay) }),
    ...(onSettled && { onSettled: (performance) => onSettled(earlier(performance, delay)) }),
    ...(onOver && { onOver: (performance) => onOver(earlier(performance, delay)) }),
  };
}

/** The same of a line of which nothing is asked. */
export function undelayedLine({ onNote, onOver }: FreeListener, delay: number): FreeListener {
  const undelayedNote = (note: FreeNote): FreeNote => ({ ...note, time: note.time - delay });
  return {
    ...(onNote && { onNote: (note) => onNote(undelayedNote(note)) }),
    ...(onOver && { onOver: (notes) => onOver(notes.map(undelayedNote)) }),
  };
}

function earlier(performance: Performance, delay: number): Performance {
  return {
    ...performance,
    notes: performance.notes.map((note) =>
      note && 'time' in note ? { ...note, time: note.time - delay } : note,
    ),
    extras: performance.extras.map((extra) => ({ ...extra, time: extra.time - delay })),
  };
}
