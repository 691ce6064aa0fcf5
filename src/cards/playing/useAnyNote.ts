import { useEffect, useState } from 'preact/hooks';
import type { Guitar } from '../kind.ts';

interface AnyNoteOptions {
  guitar: Guitar | null;
  /** Whether anything is awaited, and nothing sounds that the microphone would hear. */
  open: boolean;
  /** Notes that may come, MIDI, in whatever order. */
  notes: readonly number[];
  /** Told once of every note that was heard for sure, and whether it is one of those. */
  hear(midi: number, awaited: boolean): void;
  /** To be called where what was played last cannot be told, and nothing more comes. */
  unheard(): void;
}

/** How long is waited for more after a pluck that could not be told, in ms. */
const UNTOLD = 3000;

/** Listens to notes in any order, for a card that may be tapped as well. */
export function useAnyNote({ guitar, open, notes, hear, unheard }: AnyNoteOptions): void {
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    if (!guitar || !open) return;
    const told = new Set<string>();
    let untold = 0;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const tell = (midi: number, time: number, awaited: boolean) => {
      const name = `${midi}@${time}`;
      if (told.has(name)) return;
      told.add(name);
      hear(midi, awaited);
    };
    const task = guitar.follow(
      { notes, order: 'any' },
      {
        onSettled(performance) {
          performance.notes.forEach((note, i) => {
            if (note?.verdict === 'right') tell(notes[i]!, note.time, true);
          });
          for (const { heard, time } of performance.extras) tell(heard, time, false);
          clearTimeout(timer);
          const { untold: now = 0 } = performance;
          if (now > untold) timer = setTimeout(unheard, UNTOLD);
          untold = now;
        },
        // After a long silence it is over: what was heard stands, and listening goes on.
        onOver: () => setAttempt(attempt + 1),
      },
    );
    return () => {
      clearTimeout(timer);
      task.stop();
    };
  }, [guitar !== null, open, attempt]);
}
