import { useEffect, useState } from 'preact/hooks';

/**
 * Does something after a while, unless the page is tapped or a key is pressed before.
 *
 * @param ms null while it is not wanted
 * @returns whether it is going to
 */
export function useAfterAWhile(ms: number | null, then: () => void): boolean {
  const [stays, setStays] = useState(false);
  const waits = ms !== null && !stays;
  useEffect(() => setStays(false), [ms]);
  useEffect(() => {
    if (!waits) return;
    const timer = setTimeout(then, ms);
    const stay = () => setStays(true);
    addEventListener('pointerdown', stay);
    addEventListener('keydown', stay);
    return () => {
      clearTimeout(timer);
      removeEventListener('pointerdown', stay);
      removeEventListener('keydown', stay);
    };
  }, [waits]);
  return waits;
}
