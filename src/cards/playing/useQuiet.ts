import { useEffect, useRef, useState } from 'preact/hooks';
import type { Playing } from '../../sound/index.ts';

/** From the end of a sounding until nothing of it is left in the room, in ms. */
const DYING_AWAY = 300;

/** Whether nothing of a card sounds, so that the microphone hears the player alone; and whom to tell what is sounded. */
export function useQuiet(
  atFirst: boolean,
  sounded: (playing: Playing) => void,
): { readonly quiet: boolean; sounded(playing: Playing): void } {
  const [quiet, setQuiet] = useState(atFirst);
  const last = useRef<Playing | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(
    () => () => {
      last.current = null;
      clearTimeout(timer.current);
    },
    [],
  );
  return {
    quiet,
    sounded(playing) {
      last.current = playing;
      clearTimeout(timer.current);
      setQuiet(false);
      sounded(playing);
      void playing.done.then(() => {
        timer.current = setTimeout(() => {
          // Something else may be sounding by now: a line after its key.
          if (last.current !== playing) return;
          playing.stop();
          setQuiet(true);
        }, DYING_AWAY);
      });
    },
  };
}
