import { useEffect, useRef, useState } from 'preact/hooks';
import { redone, step, undone, type Entry } from '../../../making/entry.ts';
import { lengthen } from '../../../theory/editing.ts';
import { digitTyped, keyed, lengthTyped, NOT_TYPING, stringMoved, type Typing } from './keys.ts';
import type { Writing } from './useEntry.ts';

interface KeysOptions extends Pick<Writing, 'entry' | 'about' | 'edit' | 'set'> {
  hear(): void;
  /** Lists the keys. */
  list(): void;
}

/**
 * The whole desk takes the keys that write a phrase, but for those that what has the focus needs itself. Ctrl or ⌘ with Z
 * takes back, with Shift does again; text fields have that of their own.
 *
 * @returns the string that digits are for; null until the keyboard chose one
 */
export function useDeskKeys(options: KeysOptions): number | null {
  const [typing, setTyping] = useState<Typing>(NOT_TYPING);
  const latest = useRef({ ...options, typing, setTyping });
  latest.current = { ...options, typing, setTyping };
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (onKey(event, latest.current)) event.preventDefault();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
  return typing.string;
}

interface Desk extends KeysOptions {
  typing: Typing;
  setTyping(typing: Typing): void;
}

/** Whether the key was taken. */
function onKey(event: KeyboardEvent, desk: Desk): boolean {
  const { key, ctrlKey, metaKey, altKey, shiftKey } = event;
  const target = event.target as Element;
  if (target.closest('textarea, input[type=text], input[type=number], input[type=date], select'))
    return false;
  if (ctrlKey || metaKey) {
    if (key.toLowerCase() !== 'z') return false;
    desk.edit(shiftKey ? redone : undone);
    return true;
  }
  if (altKey || !isOnBench(target)) return false;
  if (key === '?') return (desk.list(), true);
  const needsArrows = target.closest('[role=grid], input') !== null;
  if (needsArrows && /^(Arrow|Home|End)/.test(key)) return false;
  if (key === ' ' && target.closest('button, summary, a, input, label')) return false;
  return write(event, desk);
}

/** Where letters and digits are notes: on the bench, or while nothing has the focus but the screen. */
function isOnBench(target: Element): boolean {
  return target.closest('.bench') !== null || target.matches('body, .desk h1');
}

function write(event: KeyboardEvent, desk: Desk): boolean {
  const { entry, about, typing, edit, set, setTyping } = desk;
  const { key } = event;
  if (/^\d$/.test(key)) {
    const typed = digitTyped(entry, typing, key, event.timeStamp, about);
    setTyping(typed.typing);
    // A key that comes before the screen is drawn again finds what this one left.
    desk.typing = typed.typing;
    if (typed.edit) edit(typed.edit);
    return true;
  }
  if (key === 'ArrowUp' || key === 'ArrowDown') {
    setTyping(stringMoved(entry, typing, key === 'ArrowUp' ? -1 : 1, about));
    return true;
  }
  if (key === ' ') return (desk.hear(), true);
  const length = lengthTyped(key, entry);
  if (length) {
    if (entry.cursor.on === 'gap') set({ length });
    else edit((now) => lengthened(now, length));
    return true;
  }
  const done = keyed(entry, event);
  if (!done) return false;
  if ('edit' in done) edit(done.edit);
  else set({ cursor: done.cursor });
  return true;
}

/** The cursor's note as long as this. */
function lengthened(entry: Entry, length: Entry['length']): Entry {
  return step(entry, { sketch: lengthen(entry.sketch, entry.cursor.at, length) });
}
