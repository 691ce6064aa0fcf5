import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';

/**
 * Where the focus goes once what was done is drawn, since the control it was on may be gone or be another's.
 *
 * @returns to be called with selectors: the first that is inside `root` then, and can take the focus, gets it
 */
export function useFocusAfter(root: { readonly current: HTMLElement | null }) {
  const wanted = useRef<readonly string[]>([]);
  // Right after each drawing: one that waits its turn could come after a tap, and before what the tap draws.
  useLayoutEffect(() => {
    const found = wanted.current
      .map((selector) => root.current?.querySelector<HTMLElement>(`${selector}:not(:disabled)`))
      .find((element) => element);
    wanted.current = [];
    found?.focus();
  });
  return (...selectors: string[]) => {
    wanted.current = selectors;
  };
}

/** Begins a screen at its top, with the focus on its title. */
export function useFocusOnTitle() {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus();
  }, []);
  return title;
}
