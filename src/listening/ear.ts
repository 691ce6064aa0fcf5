/** Blocks of samples in, what was played out. Runs anywhere: in a Worker as in Node over a file. */
import { eventOf, type Event } from './event.ts';
import { pluckOdds } from './evidence.ts';
import { LineFollower, SetFollower } from './follow.ts';
import { referenceOf, type Expected, type Performance } from './listening.ts';
import { PluckFinder, type MaybePluck } from './plucks.ts';
import { withoutNote } from './salience.ts';

/** What the ear says after a block. */
export type Said =
  | { readonly said: 'right'; readonly index: number; readonly time: number }
  | { readonly said: 'settled'; readonly performance: Performance };

/** Seconds within which two onsets are one pluck. */
const ONE = 0.045;
/** By how much sharper, and from which log odds on, the first of two is the beginning of the same pluck. */
const BEGUN = { sharper: 0.3, odds: -5 };

export class Ear {
  private readonly plucks: PluckFinder;
  private readonly follower: LineFollower | SetFollower;
  private readonly tuning: number;
  private last: Event | null = null;
  /** What was told last, in words; that nothing is settled at first needs no telling. */
  private told: string;
  /** What was played, as far as it is settled. */
  performance: Performance;

  /**
   * @param rate samples a second
   * @param silence half a second or so without playing, or nothing
   * @param start seconds on the clock at which the first block begins
   */
  constructor(
    rate: number,
    private readonly expected: Expected,
    silence: Float32Array = new Float32Array(0),
    start = 0,
  ) {
    this.tuning = referenceOf(expected);
    this.plucks = new PluckFinder(rate, silence, start);
    this.follower =
      expected.order === 'given'
        ? new LineFollower(expected.notes, expected.due)
        : new SetFollower(expected.notes);
    this.performance = this.follower.settle(start);
    this.told = JSON.stringify(this.performance);
  }

  /** Takes the next block. */
  hear(block: Float32Array): Said[] {
    const said = this.plucks.hear(block).flatMap((pluck) => this.judge(pluck));
    return said.concat(this.settled(false));
  }

  /** Settles what is open: no more is to come. */
  finish(): Said[] {
    const said = this.plucks.finish().flatMap((pluck) => this.judge(pluck));
    return said.concat(this.settled(true));
  }

  private judge(pluck: MaybePluck): Said[] {
    const found =
      this.follower instanceof LineFollower
        ? this.inLine(this.follower, pluck)
        : this.inSet(this.follower, pluck);
    return found.map((index) => ({ said: 'right', index, time: pluck.plucked }));
  }

  private inLine(follower: LineFollower, { time, plucked, considered }: MaybePluck): number[] {
    const event = eventOf(time, considered, this.tuning, plucked);
    const before = this.last && time - this.last.time < ONE ? this.last : null;
    const most = Math.max(...event.odds);
    if (before && most <= Math.max(...before.odds)) return [];
    // The pick and then the string: plucked when the pick was heard.
    const isBegun =
      before &&
      before.jump > event.jump + BEGUN.sharper &&
      before.odds[event.odds.indexOf(most)]! >= BEGUN.odds;
    this.last = isBegun ? { ...before, odds: event.odds, explained: event.explained } : event;
    const index = follower.add(this.last, before !== null);
    return index < 0 ? [] : [index];
  }

  /** Each note that is found is taken out of what is new, and the rest is looked at again. */
  private inSet(follower: SetFollower, { time, plucked, considered }: MaybePluck): number[] {
    const found: number[] = [];
    let rest = considered;
    for (;;) {
      const event = eventOf(time, rest, this.tuning, plucked, pluckOdds);
      const index = follower.add(event, found.length === 0);
      if (index < 0) return found;
      found.push(index);
      const partials = withoutNote(rest.partials, this.expected.notes[index]!, this.tuning);
      rest = { ...rest, partials };
    }
  }

  private settled(finished: boolean): Said[] {
    const performance = this.follower.settle(this.plucks.now, finished);
    if (performance === this.performance) return [];
    this.performance = performance;
    const told = JSON.stringify(this.performance);
    if (told === this.told) return [];
    this.told = told;
    return [{ said: 'settled', performance: this.performance }];
  }
}
