/** Something that happens at a beat, counted from the beginning. */
export interface Happening {
  readonly at: number;
  /** @param time of the audio clock, in seconds */
  call(time: number): void;
}

/** Beats closer than this are the same. */
const SAME = 1e-5;

/**
 * Happenings in time, each called a little ahead and exactly once, whoever looks and however often.
 *
 * Nothing is counted in ticks: a place in the list cannot be passed twice or left out, as a tick can that falls just where
 * one look ends and the next begins.
 */
export class Sequence {
  private readonly happenings: readonly Happening[];
  /** How many of them have been called; of this round, in a loop. */
  private called = 0;
  /** The beat at which the tempo began that holds now, and its time. */
  private beat = 0;
  private time: number;
  /** The time before which all has been called. */
  private looked = -Infinity;

  /**
   * @param start time of beat 0, in seconds
   * @param tempo beats a minute
   * @param loop beats: from the second on, back to the first, over and over
   */
  constructor(
    happenings: readonly Happening[],
    start: number,
    private tempo: number,
    loop?: { readonly from: number; readonly to: number },
  ) {
    this.time = start;
    const inTime = happenings.toSorted((a, b) => a.at - b.at);
    this.happenings = loop && loop.to > loop.from ? this.looped(inTime, loop) : inTime;
  }

  /** Calls whatever is due before a time of the audio clock. */
  callUntil(time: number): void {
    this.looked = Math.max(this.looked, time);
    for (;;) {
      const next = this.happenings[this.called];
      if (!next) return;
      const due = this.time + ((next.at - this.beat) * 60) / this.tempo;
      if (due >= time) return;
      this.called++;
      next.call(due);
    }
  }

  /** Another tempo, in beats a minute, for all that has not been called yet. */
  setTempo(tempo: number): void {
    const now = Math.max(this.time, this.looked);
    this.beat += ((now - this.time) * this.tempo) / 60;
    this.time = now;
    this.tempo = tempo;
  }

  private looped(inTime: readonly Happening[], loop: { from: number; to: number }): Happening[] {
    const inside = inTime.filter(({ at }) => at < loop.to - SAME);
    const again = inside.filter(({ at }) => at < loop.from - SAME).length;
    const back = (time: number) => {
      this.beat = loop.from;
      this.time = time;
      this.called = again;
    };
    return [...inside, { at: loop.to, call: back }];
  }
}
