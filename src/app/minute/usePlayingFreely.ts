import { useEffect, useState } from 'preact/hooks';
import type { FreeNote } from '../../listening/index.ts';
import { audioContext, play } from '../../sound/index.ts';
import { heardAt } from '../../sound/heardAt.ts';
import type { Deck } from '../../decks/deck.ts';
import { hearLine } from '../guitar/lent.ts';
import { backingSound, barsAt, type Backing } from './backing.ts';

/** How a free minute is played. */
export interface MinutePlan {
  readonly deck: Deck;
  readonly backing: Backing;
  readonly tempo: number;
}

/** A free minute while it is played. */
export interface PlayingFreely {
  /** The beat that is heard, from 0; below 0 in the count-in; null before it. */
  readonly beat: number | null;
  /** How many plucks were heard by now. */
  readonly heard: number;
  /** Ends it before its time; what was heard counts. */
  finish(): void;
}

const BAR = 4;
/** What comes so many beats before the first click is no part of it. */
const EARLY = 0.5;

/**
 * Counts a bar in, sounds what is played over, and listens; `over` is told of what was heard, in seconds from the first
 * click, or of null where sound never began. The phone's delay is taken out as far as it is known.
 */
export function usePlayingFreely(
  { deck, backing, tempo }: MinutePlan,
  over: (heard: readonly FreeNote[] | null) => void,
): PlayingFreely {
  const [beat, setBeat] = useState<number | null>(null);
  const [heard, setHeard] = useState(0);
  const [finish, setFinish] = useState(() => () => {});
  useEffect(() => {
    /** When the first click is heard, on the clock of sound, in seconds. */
    const zero = () => {
      const [context, at] = [audioContext(), playing.heardAt(BAR)];
      return context && at !== null ? (at - heardAt(context, 0)) / 1000 : null;
    };
    const task = hearLine({
      onNote: () => setHeard((count) => count + 1),
      onOver(notes) {
        const from = zero();
        playing.stop();
        over(from === null ? null : sinceThen(notes, from, (EARLY * 60) / tempo));
      },
    });
    const length = barsAt(tempo) * BAR;
    const playing = play(backingSound(backing, deck, tempo), {
      countIn: BAR,
      click: true,
      stretch: { from: 0, to: length },
      onClick: (index) => setBeat(index - BAR),
      onEnd: () => task.finish(),
    });
    setFinish(() => () => task.finish());
    return () => {
      task.stop();
      playing.stop();
    };
  }, []);
  return { beat, heard, finish };
}

function sinceThen(notes: readonly FreeNote[], from: number, early: number): FreeNote[] {
  return notes
    .map((note) => ({ ...note, time: note.time - from }))
    .filter(({ time }) => time >= -early);
}
