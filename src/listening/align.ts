/** Which event was which note: the best path through what was asked, and how much worse every other reading would be. */
import { Attempts } from './attempts.ts';
import type { Event } from './event.ts';
import { AttemptPaths, type EventReading, type NoteReading } from './lattice.ts';
import {
  candidateOf,
  playerLag,
  readingsOf,
  type Candidate,
  type EventScores,
} from './readings.ts';

/** So many events back the path may still change: what a new one costs does not grow with the line. */
const OPEN = 48;

/** What went before the last attempt. */
const FORGOTTEN: EventReading = { label: 'ignored', note: -1, margin: 0 };

/** Reads events as a performance of notes, as they come. */
export class Alignment {
  readonly candidates: Candidate[] = [];
  /** What each event is, and what became of each note. */
  readonly events: EventReading[] = [];
  notes: readonly NoteReading[];
  private readonly readings: EventScores[] = [];
  private readonly attempts: Attempts;
  private lattice: AttemptPaths;

  /** @param due when each note is to come, seconds; nothing at leisure */
  constructor(
    private readonly expected: readonly number[],
    private readonly due: readonly number[] = [],
  ) {
    this.attempts = new Attempts(expected.length);
    this.lattice = new AttemptPaths(expected.length, 0);
    this.notes = expected.map(() => ({ label: 'open', event: -1, margin: 0 }));
  }

  /** The event with which the last attempt begins. */
  get begins(): number {
    return this.lattice.first;
  }

  /** Takes the next event; one in place of the last where both are one pluck. */
  add(event: Event, replaces: boolean): void {
    if (replaces) this.candidates.pop();
    this.candidates.push(candidateOf(event, this.expected, this.due));
    this.read(false);
  }

  /** No more is to come: what was not played is missing. */
  finish(): void {
    this.read(true);
  }

  private read(finished: boolean): void {
    const { candidates, expected } = this;
    const open = Math.max(0, candidates.length - OPEN);
    const lag = playerLag(candidates);
    const due = this.due.map((time) => time + lag);
    for (let t = open; t < candidates.length; t++)
      this.readings[t] = readingsOf(candidates[t]!, expected, due);
    const begins = Math.max(0, this.attempts.begins(this.readings, open, finished));
    const anew = begins !== this.begins;
    if (anew) this.lattice = new AttemptPaths(expected.length, begins);
    const from = anew ? begins : Math.max(begins, open);
    this.lattice.update(this.readings, from, finished);
    if (anew) for (let t = 0; t < begins; t++) this.events[t] = FORGOTTEN;
    for (let t = from; t < candidates.length; t++) this.events[t] = this.lattice.event(t);
    this.notes = expected.map((_, i) => this.lattice.note(i, from));
  }
}
