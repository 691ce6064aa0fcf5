import { useState } from 'preact/hooks';
import { soundingOf, type Explained } from '../../making/explained.ts';
import { beatsOf, type Stretch } from '../../parts/stretch.ts';
import type { Playing } from '../../sound/index.ts';
import { usePlay } from '../../sound/usePlay.ts';

/** A phrase to be heard as it is, from a button that also stops it. */
export interface Hearing {
  readonly playing: boolean;
  /** The note that is heard now. */
  readonly lit: number | null;
  toggle(): void;
}

/**
 * Plays what is given when the button is pressed; it falls silent when the button goes.
 *
 * @param chosen the first and the last note of what alone is played; null for all of it
 */
export function usePhraseHearing(
  explained: Explained | null,
  chosen: Stretch | null = null,
): Hearing {
  const [lit, setLit] = useState<number | null>(null);
  const [playing, setPlaying] = useState<Playing | null>(null);
  const play = usePlay();
  const toggle = () => {
    if (playing) return playing.stop();
    if (!explained) return;
    const sounding = soundingOf(explained);
    const stretch = chosen && { stretch: beatsOf(chosen, sounding) };
    const begun = play(sounding, { ...stretch, onNote: setLit });
    setPlaying(begun);
    void begun.done.then(() => {
      setLit(null);
      setPlaying((now) => (now === begun ? null : now));
    });
  };
  return { playing: playing !== null, lit, toggle };
}
