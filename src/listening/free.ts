/** What is played where nothing is expected: a single-note line, event by event. Humbler than the follower can be. */
import { median } from '../theory/timing/median.ts';
import { SHARP } from './attack.ts';
import { EXPLAINED, eventOf, likeliest, type Event } from './event.ts';
import { referenceOf, type FreeNote, type FreePlaying } from './listening.ts';
import { PluckFinder, type MaybePluck } from './plucks.ts';

/**
 * Log odds from which an event is taken for a note at all; from which one is where the line leaves room for a note; and how
 * soft what may be an echo is (see `Attack`).
 */
export const FREE = { note: 0.8, faint: -2, echo: 1 };
/** Seconds within which events are one pluck, and within which a soft one more of the same note is its echo. */
const ONE = 0.09;
const ECHO = 0.3;
/**
 * The line leaves room for a note where it is whole steps away from its neighbours, within so much of the usual step, the
 * median of so many. There what begins sharply is likelier to be a note than its features alone can know, by so many log
 * odds; what does not may be one, and is no more than a doubt. (Measured on the guitars tuned on: of such sharp ones in
 * even ringing lines none was no note, of dull ones one in eight, of faint ones anywhere in lines with held notes most.)
 */
const ROOM = { within: 0.2, of: 9, odds: 2 };

interface Candidate extends FreeNote {
  readonly odds: number;
  readonly jump: number;
  readonly event: Event;
}

export class FreeEar {
  private readonly plucks: PluckFinder;
  private readonly tuning: number;
  /** What may still turn out to be the beginning of the next event. */
  private open: Candidate | null = null;
  private last: Candidate | null = null;
  /** The likeliest faint event since the last note: a note if the next one leaves room for it. */
  private faint: Candidate | null = null;
  /** Seconds from each of the last notes to the next. */
  private steps: number[] = [];

  /** As the constructor of `Ear`. */
  constructor(
    rate: number,
    playing: FreePlaying,
    silence: Float32Array = new Float32Array(0),
    start = 0,
  ) {
    this.plucks = new PluckFinder(rate, silence, start);
    this.tuning = referenceOf(playing);
  }

  /** Takes the next block; gives the notes that are sure by now, each once, in order. */
  hear(block: Float32Array): FreeNote[] {
    const notes = this.plucks.hear(block).flatMap((pluck) => this.take(this.eventOf(pluck)));
    // An event is told of a tenth of a second after it.
    const over = this.open && this.plucks.now > this.open.time + 2 * ONE + 0.1;
    return over ? [...notes, ...this.close()] : notes;
  }

  finish(): FreeNote[] {
    const notes = this.plucks.finish().flatMap((pluck) => this.take(this.eventOf(pluck)));
    return [...notes, ...this.close()];
  }

  private eventOf({ plucked, considered }: MaybePluck): Event {
    return eventOf(plucked, considered, this.tuning);
  }

  private take(event: Event): FreeNote[] {
    const next = candidateOf(event);
    if (next.odds < FREE.faint || this.echoes(next)) return [];
    if (next.odds < FREE.note) {
      this.keepFaint(next);
      return [];
    }
    const { open } = this;
    if (!open || next.time - open.time >= ONE) {
      const closed = [...this.close(), ...this.between(next)];
      [this.open, this.faint] = [next, null];
      return closed;
    }
    const better = next.odds > open.odds ? next : open;
    const sharper = next.jump > open.jump ? next : open;
    this.open = { ...better, time: sharper.time, jump: sharper.jump };
    return [];
  }

  private echoes(next: Candidate): boolean {
    const before = this.open ?? this.last;
    if (!before || next.jump >= FREE.echo || next.time - before.time < ONE) return false;
    return next.heard === before.heard && next.time - before.time < ECHO;
  }

  private keepFaint(next: Candidate): void {
    const before = this.open ?? this.last;
    if (!before || !this.isRoom(before, next)) return;
    if (!this.faint || next.odds > this.faint.odds) this.faint = next;
  }

  private isRoom(from: Candidate, to: Candidate): boolean {
    const steps = (to.time - from.time) / median(this.steps);
    return Math.abs(steps - Math.max(1, Math.round(steps))) <= ROOM.within;
  }

  /** The faint event before `next`, if that leaves room for it. */
  private between(next: Candidate): FreeNote[] {
    const { faint } = this;
    if (!faint || !this.isRoom(faint, next)) return [];
    return this.told(candidateOf(faint.event, faint.jump >= SHARP ? ROOM.odds : 0));
  }

  private close(): FreeNote[] {
    const { open } = this;
    if (!open) return [];
    this.open = null;
    return this.told(open);
  }

  private told(note: Candidate): FreeNote[] {
    if (this.last) this.steps = [...this.steps, note.time - this.last.time].slice(-ROOM.of);
    this.last = note;
    return [{ time: note.time, heard: note.heard, confidence: note.confidence }];
  }
}

/** The confidence in a pluck that no note explains: it is one, and cannot be told. */
const UNTOLD = 0.3;

/**
 * The likeliest note of an event. Its confidence is the chance that it is a pluck of that note and of no other.
 *
 * @param more log odds that its place in the line speaks for its being a note
 */
function candidateOf(event: Event, more = 0): Candidate {
  const { time, odds, jump, explained } = event;
  const own = Math.max(...odds);
  const all = odds.reduce((sum, value) => sum + Math.exp(value), Math.exp(-more));
  const chance = Math.exp(own) / all;
  const confidence = explained < EXPLAINED ? Math.min(UNTOLD, chance) : chance;
  return { time, heard: likeliest(event), odds: own, jump, confidence, event };
}
