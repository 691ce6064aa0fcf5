import { useEffect, useRef } from 'preact/hooks';
import { play, type Playing } from './index.ts';

/**
 * `play` for a card or a screen: what it played last falls silent when the card or screen goes, or when what it is
 * played for changes. What comes after it, in its `onEnd`, then does not begin.
 */
export function usePlay(of?: unknown): typeof play {
  const last = useRef<Playing | null>(null);
  useEffect(() => () => last.current?.stop(), [of]);
  return (...what) => (last.current = play(...what));
}
