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
}

/** Listens to notes in any order, for a card that may be tapped as well. */
export function useAnyNote({ guitar, open, notes, hear }: AnyNoteOptions): void {
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    if (!guitar || !open) return;
    const told = new Set<string>();
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
        },
        // After a long silence it is over: what was heard stands, and listening goes on.
        onOver: () => setAttempt(attempt + 1),
      },
    );
    return () => task.stop();
  }, [guitar !== null, open, attempt]);
}
