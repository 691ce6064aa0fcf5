/** What is played where nothing is expected: a single-note line, event by event. Humbler than the follower can be. */
import { EXPLAINED, eventOf, likeliest, type Event } from './event.ts';
import { referenceOf, type FreeNote, type FreePlaying } from './listening.ts';
import { PluckFinder, type MaybePluck } from './plucks.ts';

/** Log odds from which an event is taken for a note at all, and how soft what may be an echo is (see `Attack`). */
export const FREE = { note: 0, echo: 1 };
/** Seconds within which events are one pluck, and within which a soft one more of the same note is its echo. */
const ONE = 0.09;
const ECHO = 0.3;

interface Candidate extends FreeNote {
  readonly odds: number;
  readonly jump: number;
}

export class FreeEar {
  private readonly plucks: PluckFinder;
  private readonly tuning: number;
  /** What may still turn out to be the beginning of the next event. */
  private open: Candidate | null = null;
  private last: Candidate | null = null;

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
    const notes = this.plucks.hear(block).flatMap((pluck) => this.take(pluck));
    // An event is told of a tenth of a second after it.
    const over = this.open && this.plucks.now > this.open.time + 2 * ONE + 0.1;
    return over ? [...notes, ...this.close()] : notes;
  }

  finish(): FreeNote[] {
    return [...this.plucks.finish().flatMap((pluck) => this.take(pluck)), ...this.close()];
  }

  private take({ time, considered }: MaybePluck): FreeNote[] {
    const next = candidateOf(eventOf(time, considered, this.tuning));
    if (next.odds < FREE.note || this.echoes(next)) return [];
    const { open } = this;
    if (!open || next.time - open.time >= ONE) {
      const closed = this.close();
      this.open = next;
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

  private close(): FreeNote[] {
    const { open } = this;
    if (!open) return [];
    this.open = null;
    this.last = open;
    return [{ time: open.time, heard: open.heard, confidence: open.confidence }];
  }
}

/** The confidence in a pluck that no note explains: it is one, and cannot be told. */
const UNTOLD = 0.3;

/** The likeliest note of an event. Its confidence is the chance that it is a pluck of that note and of no other. */
function candidateOf(event: Event): Candidate {
  const { time, odds, jump, explained } = event;
  const own = Math.max(...odds);
  const all = odds.reduce((sum, value) => sum + Math.exp(value), 1);
  const chance = Math.exp(own) / all;
  const confidence = explained < EXPLAINED ? Math.min(UNTOLD, chance) : chance;
  return { time, heard: likeliest(event), odds: own, jump, confidence };
}
