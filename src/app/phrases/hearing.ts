import { useState } from 'preact/hooks';
import { soundingOf, type Explained } from '../../making/explained.ts';
import type { Playing } from '../../sound/index.ts';
import { usePlay } from '../../sound/usePlay.ts';

/** A phrase to be heard as it is, from a button that also stops it. */
export interface Hearing {
  readonly playing: boolean;
  /** The note that is heard now. */
  readonly lit: number | null;
  toggle(): void;
}

/** Plays what is given when the button is pressed; it falls silent when the button goes. */
export function useHearing(explained: Explained | null): Hearing {
  const [lit, setLit] = useState<number | null>(null);
  const [playing, setPlaying] = useState<Playing | null>(null);
  const play = usePlay();
  const toggle = () => {
    if (playing) return playing.stop();
    if (!explained) return;
    const begun = play(soundingOf(explained), { onNote: setLit });
    setPlaying(begun);
    void begun.done.then(() => {
      setLit(null);
      setPlaying((now) => (now === begun ? null : now));
    });
  };
  return { playing: playing !== null, lit, toggle };
}
