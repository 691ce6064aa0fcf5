import { useState } from 'preact/hooks';
import { arpeggioSound } from '../../cards/frame/sounds.ts';
import type { Place } from '../../neck/place.ts';
import { usePlay } from '../../sound/usePlay.ts';
import { viewRun } from './dots.ts';
import type { View } from './view.ts';

/** Hearing what is looked at from the bottom up, and the place that sounds now. It stops where the view changes. */
export function useRun(view: View): { lit: Place | null; hear(): void } {
  const [lit, setLit] = useState<Place | null>(null);
  const play = usePlay(view);
  const hear = () => {
    const run = viewRun(view);
    if (run.length === 0) return;
    const { done } = play(arpeggioSound(run.map(({ midi }) => midi)), {
      onNote: (index) => setLit(run[index]!.place),
    });
    void done.then(() => setLit(null));
  };
  return { lit, hear };
}
