import { COSTS, type EventScores } from './readings.ts';

/** What it costs to end at each state: how far the path has come, one more than the number of notes. */
export const endCosts = (notes: number, finished: boolean): Float64Array =>
  Float64Array.from({ length: notes + 1 }, (_, s) => (finished ? -COSTS.skipped * (notes - s) : 0));

/** The best path from the first event on, in which the player may begin again: where the last attempt begins. */
export class Attempts {
  private readonly best: Float64Array[];
  private readonly begun: Int32Array[];

  constructor(private readonly notes: number) {
    this.best = [new Float64Array(notes + 1).fill(-Infinity)];
    this.best[0]![0] = 0;
    this.begun = [new Int32Array(notes + 1).fill(-1)];
  }

  /**
   * The event with which the best path begins for the last time, or −1.
   * @param from events before it are as they were when this was asked last
   */
  begins(readings: readonly EventScores[], from: number, finished: boolean): number {
    for (let t = from; t < readings.length; t++) this.step(t, readings[t]!);
    const ends = endCosts(this.notes, finished);
    const total = this.best[readings.length]!.map((value, s) => value + ends[s]!);
    return this.begun[readings.length]![total.indexOf(Math.max(...total))]!;
  }

  private step(t: number, { own, extra, right }: EventScores): void {
    const [was, begun] = [this.best[t]!, this.begun[t]!];
    const next = was.map((value, s) => value + Math.max(0, extra[s]!));
    const from = begun.slice();
    let [reached, since] = [-Infinity, -1];
    for (let s = 1; s <= this.notes; s++) {
      reached -= COSTS.skipped;
      if (was[s - 1]! > reached) [reached, since] = [was[s - 1]!, begun[s - 1]!];
      const value = reached + own[s - 1]!;
      if (value > next[s]!) [next[s], from[s]] = [value, since];
    }
    const again = Math.max(...was.subarray(1)) - COSTS.restart;
    for (let s = 1; s <= this.notes; s++) {
      const value = again - COSTS.skipped * (s - 1) + (s === 1 ? own : right)[s - 1]!;
      if (value > next[s]!) [next[s], from[s]] = [value, t];
    }
    [this.best[t + 1], this.begun[t + 1]] = [next, from];
  }
}
