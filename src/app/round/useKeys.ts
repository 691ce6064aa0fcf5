import { useEffect } from 'preact/hooks';

/** Where keys write or choose by themselves. */
const WRITING = 'input, select, textarea, dialog';

/** Digits give an answer, counted from the first, and the space bar sounds the card again; Enter is the browser's own. */
export function useRoundKeys(): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const at = event.target as HTMLElement;
      // A card that is kept in time by any key has taken it.
      if (event.defaultPrevented) return;
      if (event.ctrlKey || event.metaKey || event.altKey || at.closest(WRITING)) return;
      const pressed = pressedBy(event.key, at);
      if (!pressed) return;
      event.preventDefault();
      pressed.click();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}

/** The button that a key stands for; null for any other key. */
function pressedBy(key: string, at: HTMLElement): HTMLElement | null {
  const card = document.querySelector('.card');
  if (!card) return null;
  if (/^[1-9]$/.test(key)) {
    return card.querySelectorAll<HTMLElement>('.answers [data-answer]')[Number(key) - 1] ?? null;
  }
  if (key !== ' ' || at.closest('button')) return null;
  return card.querySelector<HTMLElement>('[data-do="hear"]');
}
