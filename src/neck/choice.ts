import type { FingeringOptions } from './fingering.ts';

/** What a teacher says of how a phrase lies: without open strings, with them, or the fret that the index finger stays at. */
export type HandChoice = 'movable' | 'open strings' | number;

/** What the choice asks of a fingering. */
export function fingeringOptions(choice: HandChoice | undefined): FingeringOptions {
  if (choice === undefined) return {};
  if (choice === 'movable') return { open: false };
  return choice === 'open strings' ? { open: 'rather' } : { position: choice, open: false };
}

/** `movable`, `open strings`, `at fret 5`. */
export function choiceText(choice: HandChoice): string {
  return typeof choice === 'number' ? `at fret ${choice}` : choice;
}

/** The choice that a text names, or null. Inverts `choiceText`. */
export function parseChoice(text: string): HandChoice | null {
  if (text === 'movable' || text === 'open strings') return text;
  const fret = Number(/^at fret ([1-9]\d?)$/.exec(text)?.[1]);
  return fret >= 1 && fret <= 24 ? fret : null;
}
