/** Follows a performance event by event, and says what is settled. */
import { align, type Alignment, type Event, type NoteReading } from './align.ts';
import type { Extra, Performance, Verdict } from './listening.ts';

/** By how much (log odds) a reading has to be better than the best other before it is told. */
export const SURE = { right: 0.2, atOnce: 1, wrong: 1.5, missing: 1.5, extra: 2 };

/** A note is settled when so many notes after it were heard, or so many seconds have passed. */
const NOTES_LATER = 2;
const LATER = 1.2;

/** Whether a note sounded between two times after all, though no onset told of it: the time, or null; else unsure. */
export type Search = (midi: number, from: number, to: number) => number | 'unsure' | null;

/** Follows notes in a given order. */
export class LineFollower {
  private readonly events: Event[] = [];
  private verdicts: (Verdict | null)[];
  private settledBegin = 0;
  private restarts = 0;
  private alignment: Alignment;

  constructor(
    private readonly notes: readonly number[],
    private readonly search: Search,
  ) {
    this.verdicts = notes.map(() => null);
    this.alignment = align([], notes, false);
  }

  /**
   * Takes the next event; one in place of the last where both are one pluck.
   * @returns the expected note that was heard right just now, or −1
   */
  add(event: Event, replaces: boolean): number {
    if (replaces) this.events.pop();
    this.events.push(event);
    this.alignment = align(this.events, this.notes, false);
    const reading = this.alignment.events.at(-1)!;
    return reading.label === 'right' && reading.margin >= SURE.atOnce ? reading.note : -1;
  }

  /** What is settled by now. */
  settle(now: number, finished = false): Performance {
    if (finished) this.alignment = align(this.events, this.notes, true);
    if (this.alignment.begins !== this.settledBegin) {
      this.settledBegin = this.alignment.begins;
      this.restarts++;
      this.verdicts = this.notes.map(() => null);
    }
    this.alignment.notes.forEach((reading, i) => {
      if (this.verdicts[i] === null && (finished || this.ripe(i, reading, now))) {
        this.verdicts[i] = this.verdictOf(i, reading);
      }
    });
    return {
      notes: this.verdicts.slice(),
      extras: this.extras(),
      restarts: this.restarts,
      over: this.verdicts.every((verdict) => verdict !== null),
    };
  }

  private ripe(i: number, reading: NoteReading, now: number): boolean {
    if (reading.label === 'open') return false;
    const later = this.alignment.notes.slice(i + 1).filter(({ event }) => event >= 0);
    if (later.length >= NOTES_LATER) return true;
    const since =
      reading.event >= 0 ? this.events[reading.event]! : this.events[later[0]?.event ?? -1];
    return since !== undefined && now - since.time > LATER;
  }

  private verdictOf(i: number, reading: NoteReading): Verdict {
    const event = this.events[reading.event];
    if (reading.label === 'right' && reading.margin >= SURE.right) {
      return { verdict: 'right', time: event!.time };
    }
    if (reading.label === 'wrong' && reading.margin >= SURE.wrong) {
      return {
        verdict: 'wrong',
        time: event!.time,
        heard: this.alignment.events[reading.event]!.heard,
      };
    }
    const absent = reading.label === 'missing' || reading.label === 'open';
    if (absent) {
      const found = this.search(this.notes[i]!, ...this.gap(i));
      if (typeof found === 'number') return { verdict: 'right', time: found };
      if (found === null && (reading.margin >= SURE.missing || reading.label === 'open'))
        return { verdict: 'missing' };
    }
    return { verdict: 'unheard' };
  }

  /** The time between the notes heard before and after an expected one. */
  private gap(i: number): [number, number] {
    const { notes } = this.alignment;
    const before = notes.slice(0, i).findLast(({ event }) => event >= 0);
    const after = notes.slice(i + 1).find(({ event }) => event >= 0);
    const start = before ? this.events[before.event]!.time : (this.events[0]?.time ?? 0) - 1;
    return [start, after ? this.events[after.event]!.time : Infinity];
  }

  private extras(): Extra[] {
    return this.alignment.events.flatMap(({ label, margin, heard, note }, t) =>
      label === 'extra' && margin >= SURE.extra
        ? [{ time: this.events[t]!.time, heard, after: note }]
        : [],
    );
  }
}
