/** The free minutes on this device: the figures of each, and of those whose line was kept its notes. */
import { signal } from '../../signals/signal.ts';
import * as v from 'valibot';
import type { Deck } from '../../decks/deck.ts';
import { readDeck, writeDeck } from '../../decks/document.ts';
import type { MinuteTold } from '../../making/minute.ts';
import { keepMinute, listMinutes, removeMinute, type StoredMinute } from '../../store/minutes.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { reportingTrouble } from '../state.ts';

const number = (least: number, most: number) =>
  v.pipe(v.number(), v.minValue(least), v.maxValue(most));
const whole = (most: number) => v.pipe(number(0, most), v.integer());

/** What is kept of every minute. */
const Figures = v.object({
  /** Beats a minute that were clicked. */
  tempo: number(20, 400),
  notes: whole(2000),
  leftOut: whole(2000),
  /** Leaps among the moves, 0 to 1; null where there was no move. */
  leaping: v.nullable(number(0, 1)),
  /** Steps of the longest run. */
  run: whole(2000),
  /** Degrees whose arpeggio was outlined. */
  outlined: whole(7),
  /** From the lowest to the highest fret pressed, mm; null where a note is not on the instrument. */
  reach: v.nullable(number(0, 1000)),
  /** Standard deviation of the onsets from the divisions of the beat, s. */
  spread: number(0, 2),
  pauses: whole(100),
});
export type Figures = v.InferOutput<typeof Figures>;

const Document = v.object({ figures: Figures, line: v.unknown() });

/** A free minute. */
export interface Minute {
  /** The lesson's id. */
  readonly lesson: string;
  /** When it was over, ms. */
  readonly at: number;
  readonly figures: Figures;
  /** The line, if it was kept, as the one phrase of a lesson in its key on its instrument. */
  readonly line: Deck | null;
}

/** The oldest first; null until they were read from the device. */
export const minutes = signal<readonly Minute[] | null>(null);

/** Reads them from the device, once. What cannot be read stays there. */
export async function openMinutes(): Promise<void> {
  if (minutes.value !== null) return;
  const stored = (await reportingTrouble(listMinutes())) ?? [];
  minutes.value = stored.flatMap((one) => readMinute(one) ?? []);
}

/** Inverts `writeMinute`; null where it holds none. */
export function readMinute({ lesson, at, document }: StoredMinute): Minute | null {
  const read = v.safeParse(Document, document);
  if (!read.success) return null;
  const { figures, line } = read.output;
  if (line === null) return { lesson, at, figures, line };
  const deck = readDeck(line);
  return 'deck' in deck && deck.deck.phrases.length === 1
    ? { lesson, at, figures, line: deck.deck }
    : null;
}

export function writeMinute({ lesson, at, figures, line }: Minute): StoredMinute {
  return { lesson, at, document: { figures, line: line && writeDeck(line) } };
}

/** Keeps a minute, in place of what it was before. */
export async function keep(minute: Minute): Promise<void> {
  await openMinutes();
  const others = minutes.value!.filter((one) => !isSame(one, minute));
  minutes.value = [...others, minute].toSorted((a, b) => a.at - b.at);
  await reportingTrouble(keepMinute(writeMinute(minute)));
}

/** Takes a minute off the device. */
export async function remove(minute: Minute): Promise<void> {
  minutes.value = (minutes.value ?? []).filter((one) => !isSame(one, minute));
  await reportingTrouble(removeMinute(minute));
}

const isSame = (one: Minute, other: Minute) => one.lesson === other.lesson && one.at === other.at;

/** What is kept of what was told. */
export function figuresOf({ line, outlined, along, even, leftOut }: MinuteTold, tempo: number) {
  return {
    tempo,
    notes: line.notes,
    leftOut,
    leaping: line.leaping,
    run: line.run?.steps ?? 0,
    outlined: outlined.length,
    reach: along && along.reach,
    spread: even.spread,
    pauses: line.pauses.length,
  } satisfies Figures;
}

/** A line as it is kept. */
export function lineDeck(
  { key, instrument }: Pick<Deck, 'key' | 'instrument'>,
  line: Phrase,
): Deck {
  return {
    title: 'A free minute',
    note: '',
    lessonDay: null,
    instrument,
    key,
    drills: [],
    phrases: [line],
  };
}
