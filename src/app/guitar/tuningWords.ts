/** What is said while a guitar is tuned up. */
import { IN_TUNE, LEFT_SO } from '../../listening/listening.ts';
import type { Tuning } from './tuning.ts';

/** Whether a string so many cents off is in tune. */
export const isInTune = (cents: number): boolean => Math.abs(cents) <= IN_TUNE;

/** How a string stands: an arrow the way its pitch has to go, and words. */
interface StringWords {
  readonly state: 'unheard' | 'ready' | 'near' | 'off';
  /** `↑`, `↓` or `✓`. */
  readonly arrow: string;
  /** `in tune`, `too low: tighten` */
  readonly words: string;
}

/** @param cents above 0 too high; null where the string was not heard yet */
export function stringWords(cents: number | null): StringWords {
  if (cents === null) return { state: 'unheard', arrow: '', words: 'pluck it' };
  if (isInTune(cents)) return { state: 'ready', arrow: '✓', words: 'in tune' };
  const [arrow, way, turn] = cents < 0 ? ['↑', 'too low', 'tighten'] : ['↓', 'too high', 'loosen'];
  if (Math.abs(cents) <= LEFT_SO) return { state: 'near', arrow, words: `a little ${way}` };
  return { state: 'off', arrow, words: `${way}: ${turn}` };
}

/** `−12`, `+3`, `0`: whole cents, with their sign. */
export function centsLabel(cents: number): string {
  const whole = Math.round(cents);
  if (whole === 0) return '0';
  return whole < 0 ? `−${-whole}` : `+${whole}`;
}

/** What a guitar's readings come to, and what to do. */
export function tuningWords({ state, offset }: Tuning): string {
  const whole = `${Math.abs(Math.round(offset))} cents ${offset < 0 ? 'low' : 'high'}`;
  switch (state) {
    case 'open':
      return 'Pluck one open string after another and let each ring.';
    case 'ready':
      return 'In tune.';
    case 'together':
      return Math.round(offset) === 0
        ? 'Near enough: it may be left so.'
        : `In tune with itself, as a whole ${whole}: it may be left so, and is counted in.`;
    case 'far':
      return `In tune with itself, but as a whole ${whole}: too far to tell which notes are meant. Tune it up, or set the reference pitch under Sound and names.`;
    case 'apart':
      return 'Not all strings agree: tune those whose arrow shows the way.';
  }
}
