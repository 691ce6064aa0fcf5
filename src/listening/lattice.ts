import { endCosts } from './attempts.ts';
import { COSTS, type EventScores } from './readings.ts';

/** What an event is in the best path. */
export interface EventReading {
  readonly label: 'right' | 'wrong' | 'extra' | 'ignored';
  /** The expected note it answers, or after which it comes; −1 for none. */
  readonly note: number;
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

/** The best paths of one attempt, to and from every event and state: how many notes the path has come. */
export class AttemptPaths {
  private readings: readonly EventScores[] = [];
  private readonly to: Float64Array[] = [];
  private readonly from: Float64Array[] = [];
  /** Before an event, the best way to stand where the last note of a state comes next, notes before it skipped. */
  private readonly reaching: Float64Array[] = [];
  /** From an event on, the best way on from a state if the event is a note behind it. */
  private readonly onward: Float64Array[] = [];

  /** @param first the event with which the attempt begins */
  constructor(
    private readonly notes: number,
    readonly first: number,
  ) {
    this.to[first] = new Float64Array(notes + 1).fill(-Infinity);
    this.to[first][0] = 0;
  }

  /** @param from events before it are as they were at the last update */
  update(readings: readonly EventScores[], from: number, finished: boolean): void {
    this.readings = readings;
    const first = Math.max(this.first, from);
    for (let t = first; t < readings.length; t++) this.forward(t);
    this.from[readings.length] = endCosts(this.notes, finished);
    for (let t = readings.length - 1; t >= first; t--) this.backward(t);
  }

  private forward(t: number): void {
    const was = this.to[t]!;
    const { own, extra } = this.readings[t]!;
    const next = was.map((value, s) => value + Math.max(0, extra[s]!));
    const reaching = new Float64Array(was.length).fill(-Infinity);
    for (let s = 1; s < was.length; s++) {
      reaching[s] = Math.max(reaching[s - 1]! - COSTS.skipped, was[s - 1]!);
      next[s] = Math.max(next[s]!, reaching[s]! + own[s - 1]!);
    }
    [this.to[t + 1], this.reaching[t]] = [next, reaching];
  }

  private backward(t: number): void {
    const then = this.from[t + 1]!;
    const { own, extra } = this.readings[t]!;
    const out = then.map((value, s) => value + Math.max(0, extra[s]!));
    const onward = new Float64Array(out.length).fill(-Infinity);
    for (let s = out.length - 2; s >= 0; s--) {
      onward[s] = Math.max(onward[s + 1]! - COSTS.skipped, then[s + 1]! + own[s]!);
      out[s] = Math.max(out[s]!, onward[s]!);
    }
    [this.from[t], this.onward[t]] = [out, onward];
  }

  /** What event `t` is. */
  event(t: number): EventReading {
    const [was, then, reaching] = [this.to[t]!, this.from[t + 1]!, this.reaching[t]!];
    const { right, wrong, extra } = this.readings[t]!;
    let best: EventReading = { label: 'ignored', note: -1, margin: 0 };
    let top = -Infinity;
    for (let s = 0; s < was.length; s++) top = Math.max(top, was[s]! + then[s]!);
    let second = -Infinity;
    const offer = (value: number, label: EventReading['label'], note: number) => {
      if (value > top) {
        [top, second] = [value, top];
        best = { label, note, margin: 0 };
      } else if (value > second) second = value;
    };
    for (let s = 0; s < was.length; s++) {
      offer(was[s]! + extra[s]! + then[s]!, 'extra', s - 1);
      if (s === 0) continue;
      offer(reaching[s]! + right[s - 1]! + then[s]!, 'right', s - 1);
      offer(reaching[s]! + wrong[s - 1]! + then[s]!, 'wrong', s - 1);
    }
    return { ...best, margin: top - second };
  }

  /** What became of note `i`, as far as the events from `from` on tell. */
  note(i: number, from: number): NoteReading {
    const best = { right: -Infinity, wrong: -Infinity, missing: -Infinity, open: -Infinity };
    const event = { right: -1, wrong: -1, missing: -1, open: -1 };
    const offer = (label: keyof typeof best, value: number, t: number) => {
      if (value > best[label]) [best[label], event[label]] = [value, t];
    };
    const s = i + 1;
    for (let t = Math.max(this.first, from); t < this.readings.length; t++) {
      const { right, wrong } = this.readings[t]!;
      const through = this.reaching[t]![s]! + this.from[t + 1]![s]!;
      offer('right', through + right[i]!, t);
      offer('wrong', through + wrong[i]!, t);
      offer('missing', this.reaching[t]![s]! - COSTS.skipped + this.onward[t]![s]!, -1);
    }
    const ends = this.from[this.readings.length]!;
    this.to[this.readings.length]!.subarray(0, s).forEach((value, r) =>
      offer('open', value + ends[r]!, -1),
    );
    const labels = ['right', 'wrong', 'missing', 'open'] as const;
    const label = labels.reduce((a, b) => (best[b] > best[a] ? b : a));
    const others = labels.filter((other) => other !== label).map((other) => best[other]);
    return { label, event: event[label], margin: best[label] - Math.max(...others) };
  }
}
