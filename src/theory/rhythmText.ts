import { type Beats, beats } from './rhythm.ts';

/** `0`, `1/3`, `4/3`. */
export function beatsText(a: Beats): string {
  return a.d === 1 ? `${a.n}` : `${a.n}/${a.d}`;
}

/** The beats that a text like `4/3` names, or null. Inverts `beatsText`. */
export function parseBeats(text: string): Beats | null {
  const match = /^(-?\d{1,9})(?:\/(\d{1,9}))?$/.exec(text.trim());
  if (!match) return null;
  const d = Number(match[2] ?? 1);
  return d === 0 ? null : beats(Number(match[1]), d);
}
