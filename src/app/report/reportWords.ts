/** What a report says, in words. */
import { KINDS } from '../../cards/index.ts';
import { isBlank } from '../../decks/plain.ts';
import type { Report } from '../../decks/report.ts';
import { DAY } from '../../memory/day.ts';
import type { Confusion } from '../../practice/confusions.ts';
import { chordOn } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { parentKey } from '../../theory/scale.ts';
import { timesWords } from '../measured.ts';

/** The name that was typed, or a few letters that tell one sender from another. */
export function studentName(name: string, sender: number): string {
  return isBlank(name) ? `Student ${sender.toString(16).padStart(8, '0').slice(0, 4)}` : name;
}

// Made once: two hundred of them take longer than all reports of a class.
const dayOnly = { timeZone: 'UTC', day: 'numeric', month: 'long' } as const;
const DAYS = new Intl.DateTimeFormat('en-GB', dayOnly);
const HOURS = new Intl.DateTimeFormat('en-GB', { ...dayOnly, hour: '2-digit', minute: '2-digit' });

/** `3 December`, with its hour where that is asked for. A report's day begins at 04:00. */
export function reportDay({ day, minute }: Pick<Report, 'day' | 'minute'>, hour = false): string {
  return (hour ? HOURS : DAYS).format(day * DAY + (minute + 240) * 60_000);
}

/** `ii seen as IV`. */
export function takenWords({ kind, size, degree, takenFor }: Confusion, key: Key): string {
  const numeral = (of: number) => numeralLabel(chordOn(parentKey(key), of, size));
  return `${numeral(degree)} ${KINDS[kind].words.taken} as ${numeral(takenFor)}`;
}

/** `ii seen as IV, 6 times`. */
export function confusionWords(pair: Confusion, key: Key): string {
  return `${takenWords(pair, key)}, ${timesWords(pair.times)}`;
}
