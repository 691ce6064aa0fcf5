/**
 * Which event was which note: the best path through what was asked, and how much worse every other reading would be.
 * Scores are log odds; an event that is no pluck at all scores 0.
 */
import { HIGHEST_HEARD, LOWEST_HEARD } from './salience.ts';

/** Something heard: log odds that it is the pluck of each note from `LOWEST_HEARD` up. */
export interface Event {
  /** Seconds. */
  readonly time: number;
  readonly odds: Float64Array;
  /** How sharply it begins, see `Attack`. */
  readonly jump: number;
  /** The expected note that it is settled to be. */
  settled?: number;
}

/** What a reading costs that is not a note played as asked. */
export const COSTS = { wrong: 2.7, skipped: 2.7, extra: 3.5, again: 3.5, restart: 4.5 };

/** An onset is likelier to be what is expected than features alone can know. */
const EXPECTED = 0.8;
/** What it costs to read a settled event otherwise. */
const UNSETTLED = 6;
/** Off its time a note costs half the square of it, in widths of so many steps, up to so much. */
const LATE = { width: 0.4, most: 2 };

/** What an event is in the best path. */
export interface EventReading {
  /** The expected note it answers, −1 for none. */
  readonly note: number;
  readonly label: 'right' | 'wrong' | 'extra' | 'ignored';
  /** MIDI number of what was heard. */
  readonly heard: number;
  readonly restart: boolean;
  /** By how much this reading is better than the best other of this event. */
  readonly margin: number;
}

/** What became of an expected note in the best path: `open` where nothing has gone past it. */
export interface NoteReading {
  readonly label: 'right' | 'wrong' | 'missing' | 'open';
  /** The event that answers it, or −1. */
  readonly event: number;
  readonly margin: number;
}

export interface Alignment {
  readonly events: readonly EventReading[];
  readonly notes: readonly NoteReading[];
  /** The event with which the last attempt begins. */
  readonly begins: number;
}

export const oddsOf = (event: Event, midi: number): number =>
  event.odds[midi - LOWEST_HEARD] ?? -Infinity;

/** The likeliest note of an event but `except`. */
export function likeliest(event: Event, except = -1): number {
  let best = -1;
  for (let midi = LOWEST_HEARD; midi <= HIGHEST_HEARD; midi++) {
    if (midi !== except && (best < 0 || oddsOf(event, midi) > oddsOf(event, best))) best = midi;
  }
  return best;
}

const elsewhere = (event: Event, note: number): number =>
  event.settled === undefined || event.settled === note ? 0 : UNSETTLED;

/** What it costs that an event comes off the time of a note; `due` as far as the player keeps it. */
function late(event: Event, due: readonly number[], note: number): number {
  if (due.length < 2) return 0;
  const step = (due.at(-1)! - due[0]!) / (due.length - 1);
  const off = (event.time - due[note]!) / (LATE.width * step);
  return Math.min(LATE.most, 0.5 * off * off);
}

/** How much later than asked the player plays, device and hand together: the median of what is surely in place. */
export function lagOf(
  events: readonly Event[],
  notes: readonly number[],
  due: readonly number[],
): number {
  const lags = events.flatMap((event) => {
    const midi = likeliest(event);
    if (oddsOf(event, midi) < 2) return [];
    const offs = due.filter((_, i) => notes[i] === midi).map((time) => event.time - time);
    return offs.toSorted((a, b) => Math.abs(a) - Math.abs(b)).slice(0, 1);
  });
  return lags.toSorted((a, b) => a - b)[lags.length >> 1] ?? 0;
}

/** Scores of what an event can be, each note's worked out once. */
class Scores {
  readonly right: Float64Array;
  readonly wrong: Float64Array;
  readonly others: number[];
  readonly extra: Float64Array;

  constructor(
    readonly event: Event,
    notes: readonly number[],
    due: readonly number[],
  ) {
    const top = likeliest(event);
    const second = likeliest(event, top);
    this.others = notes.map((midi) => (midi === top ? second : top));
    const place = notes.map((_, i) => late(event, due, i) + elsewhere(event, i));
    this.right = Float64Array.from(notes, (midi, i) => oddsOf(event, midi) + EXPECTED - place[i]!);
    this.wrong = Float64Array.from(
      this.others,
      (midi, i) => oddsOf(event, midi) - COSTS.wrong - place[i]!,
    );
    // By how far the path has come: −1 first.
    this.extra = Float64Array.from([-1, ...notes], (midi) =>
      Math.max(
        oddsOf(event, top) - COSTS.extra,
        midi < 0 ? -Infinity : oddsOf(event, midi) - COSTS.again,
      ),
    );
  }

  heardExtra(notes: readonly number[], after: number): number {
    const top = likeliest(this.event);
    const again = notes[after];
    if (again === undefined) return top;
    return oddsOf(this.event, again) - COSTS.again >= oddsOf(this.event, top) - COSTS.extra
      ? again
      : top;
  }
}

/**
 * Reads events as a performance of `notes`.
 * @param finished whether no more is to come: then what was not played is missing
 * @param due when each note is to come, seconds; nothing at leisure
 */
export function align(
  events: readonly Event[],
  notes: readonly number[],
  finished: boolean,
  due: readonly number[] = [],
): Alignment {
  const lag = lagOf(events, notes, due);
  const kept = due.map((time) => time + lag);
  const scores = events.map((event) => new Scores(event, notes, kept));
  const last = lastRestart(scores, notes.length, finished);
  return new Lattice(scores, notes, last, finished).read();
}

/** One more than the number of notes: states are how far the path has come, from −1. */
const endCosts = (notes: number, finished: boolean) =>
  Float64Array.from({ length: notes + 1 }, (_, s) => (finished ? -COSTS.skipped * (notes - s) : 0));

/** The event with which the best path begins for the last time, or −1. */
function lastRestart(scores: readonly Scores[], notes: number, finished: boolean): number {
  let best = new Float64Array(notes + 1).fill(-Infinity);
  best[0] = 0;
  let begun = new Int32Array(notes + 1).fill(-1);
  scores.forEach((score, t) => {
    const next = Float64Array.from(best, (was, s) => was + Math.max(0, score.extra[s]!));
    const from = begun.slice();
    for (let s = 1; s <= notes; s++) {
      const own = Math.max(score.right[s - 1]!, score.wrong[s - 1]!);
      for (let r = 0; r < s; r++) {
        const value = best[r]! - COSTS.skipped * (s - 1 - r) + own;
        if (value > next[s]!) [next[s], from[s]] = [value, begun[r]!];
      }
    }
    for (let r = 1; r <= notes; r++) {
      const value = best[r]! - COSTS.restart + score.right[0]!;
      if (value > next[1]!) [next[1], from[1]] = [value, t];
    }
    [best, begun] = [next, from];
  });
  const ends = endCosts(notes, finished);
  const total = best.map((value, s) => value + ends[s]!);
  return begun[total.indexOf(Math.max(...total))]!;
}

/** Best scores up to and from every event and state, after the last restart. */
class Lattice {
  private readonly to: Float64Array[] = [];
  private readonly from: Float64Array[] = [];
  private readonly reached: Float64Array[] = [];

  constructor(
    private readonly scores: readonly Scores[],
    private readonly notes: readonly number[],
    private readonly begins: number,
    finished: boolean,
  ) {
    const n = notes.length;
    const first = Math.max(0, begins);
    const start = new Float64Array(n + 1).fill(-Infinity);
    start[0] = 0;
    this.to[first] = start;
    for (let t = first; t < scores.length; t++) this.to[t + 1] = this.forward(t);
    this.from[scores.length] = endCosts(n, finished);
    for (let t = scores.length - 1; t >= first; t--) this.from[t] = this.backward(t);
  }

  private own(t: number, s: number): number {
    return Math.max(this.scores[t]!.right[s - 1]!, this.scores[t]!.wrong[s - 1]!);
  }

  private forward(t: number): Float64Array {
    const was = this.to[t]!;
    const next = Float64Array.from(
      was,
      (value, s) => value + Math.max(0, this.scores[t]!.extra[s]!),
    );
    let reached = -Infinity;
    for (let s = 1; s < next.length; s++) {
      reached = Math.max(reached - COSTS.skipped, was[s - 1]!);
      next[s] = Math.max(next[s]!, reached + this.own(t, s));
    }
    return next;
  }

  private backward(t: number): Float64Array {
    const then = this.from[t + 1]!;
    const out = Float64Array.from(
      then,
      (value, s) => value + Math.max(0, this.scores[t]!.extra[s]!),
    );
    let onward = -Infinity;
    for (let s = out.length - 2; s >= 0; s--) {
      onward = Math.max(onward - COSTS.skipped, then[s + 1]! + this.own(t, s + 1));
      out[s] = Math.max(out[s]!, onward);
    }
    return out;
  }

  read(): Alignment {
    const first = Math.max(0, this.begins);
    const readings = this.scores.map((_, t): EventReading =>
      t < first
        ? { note: -1, label: 'ignored', heard: -1, restart: false, margin: 0 }
        : this.readEvent(t),
    );
    const notes = this.notes.map((_, i) => this.readNote(i));
    return { events: readings, notes, begins: first };
  }

  /** Before event `t`, the best way to stand where note `s - 1` comes next but for skipping. */
  private reaching(t: number): Float64Array {
    return (this.reached[t] ??= this.reachingAfter(t));
  }

  private reachingAfter(t: number): Float64Array {
    const was = this.to[t]!;
    const out = new Float64Array(was.length).fill(-Infinity);
    for (let s = 1; s < was.length; s++)
      out[s] = Math.max(out[s - 1]! - COSTS.skipped, was[s - 1]!);
    return out;
  }

  private readEvent(t: number): EventReading {
    const score = this.scores[t]!;
    const then = this.from[t + 1]!;
    const was = this.to[t]!;
    const reaching = this.reaching(t);
    const options: Omit<EventReading, 'margin'>[] = [];
    const values: number[] = [];
    const add = (value: number, reading: Omit<EventReading, 'margin'>) => {
      values.push(value);
      options.push(reading);
    };
    for (let s = 0; s < was.length; s++) {
      add(was[s]! + then[s]!, { note: -1, label: 'ignored', heard: -1, restart: false });
      add(was[s]! + score.extra[s]! + then[s]!, {
        note: s - 1,
        label: 'extra',
        heard: score.heardExtra(this.notes, s - 1),
        restart: false,
      });
      if (s === 0) continue;
      const restart = t === this.begins;
      const place = { note: s - 1, restart };
      add(reaching[s]! + score.right[s - 1]! + then[s]!, {
        ...place,
        label: 'right',
        heard: this.notes[s - 1]!,
      });
      add(reaching[s]! + score.wrong[s - 1]! + then[s]!, {
        ...place,
        label: 'wrong',
        heard: score.others[s - 1]!,
      });
    }
    const top = values.indexOf(Math.max(...values));
    const chosen = options[top]!;
    let other = -Infinity;
    values.forEach((value, i) => {
      if (options[i]!.label !== chosen.label || options[i]!.note !== chosen.note)
        other = Math.max(other, value);
    });
    return { ...chosen, margin: values[top]! - other };
  }

  private readNote(i: number): NoteReading {
    const best = { right: -Infinity, wrong: -Infinity, missing: -Infinity, open: -Infinity };
    const event = { right: -1, wrong: -1, missing: -1, open: -1 };
    const offer = (label: keyof typeof best, value: number, t: number) => {
      if (value > best[label]) [best[label], event[label]] = [value, t];
    };
    const s = i + 1;
    const first = Math.max(0, this.begins);
    for (let t = first; t < this.scores.length; t++) {
      const reaching = this.reaching(t);
      const then = this.from[t + 1]!;
      offer('right', reaching[s]! + this.scores[t]!.right[i]! + then[s]!, t);
      offer('wrong', reaching[s]! + this.scores[t]!.wrong[i]! + then[s]!, t);
      // Past it: from a state before it to one behind it.
      let before = reaching[s]!;
      for (let q = s + 1; q < then.length; q++) {
        before -= COSTS.skipped;
        offer('missing', before + this.own(t, q) + then[q]!, -1);
      }
    }
    const ends = this.from[this.scores.length]!;
    for (let r = 0; r <= i; r++) offer('open', this.to[this.scores.length]![r]! + ends[r]!, -1);
    const labels = ['right', 'wrong', 'missing', 'open'] as const;
    const label = labels.reduce((a, b) => (best[b] > best[a] ? b : a));
    const others = labels.filter((other) => other !== label).map((other) => best[other]);
    return { label, event: event[label], margin: best[label] - Math.max(...others) };
  }
}
