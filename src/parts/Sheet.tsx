import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './Sheet.css';

interface SheetProps {
  title: string;
  close(): void;
  children: ComponentChildren;
}

/**
 * Something over the screen it belongs to. The focus stays in it, Escape closes it, and then the focus is back where it
 * was. It begins on what has `data-begin`, else on its title.
 */
export function Sheet({ title, close, children }: SheetProps) {
  const sheet = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    const dialog = sheet.current!;
    dialog.showModal();
    dialog.querySelector<HTMLElement>('[data-begin], h2')?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    // For Escape. It is told late, so that whoever taps on at once after _Done_ would lose the next one by it.
    <dialog class="over" ref={sheet} aria-label={title} onClose={close}>
      <header>
        <h2 tabIndex={-1}>{title}</h2>
        <button type="button" class="button small" onClick={close}>
          Done
        </button>
      </header>
      {children}
    </dialog>
  );
}
