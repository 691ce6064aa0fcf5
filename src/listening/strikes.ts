/** When strings were struck, muted or sounding, where it does not matter which: the attacks alone. */
import { SHARP } from './attack.ts';
import { PluckFinder, type MaybePluck } from './plucks.ts';

/** Seconds within which attacks are one stroke, over several strings too. */
const ONE = 0.08;
/** Where listening begins something seems to begin too: so many seconds of it are let go. */
const BEGINNING = 0.1;

interface Stroke {
  readonly time: number;
  readonly jump: number;
}

export class StrikeEar {
  private readonly plucks: PluckFinder;
  /** What may still turn out to be the softer part of the next attack. */
  private open: Stroke | null = null;

  /** As the constructor of `FreeEar`. */
  constructor(
    rate: number,
    silence: Float32Array = new Float32Array(0),
    private readonly start = 0,
  ) {
    this.plucks = new PluckFinder(rate, silence, start);
  }

  /** Takes the next block; gives when strings were struck, in seconds, each once, in order. */
  hear(block: Float32Array): number[] {
    const struck = this.plucks.hear(block).flatMap((pluck) => this.take(pluck));
    const over = this.open && this.plucks.now > this.open.time + 2 * ONE + 0.1;
    return over ? [...struck, ...this.close()] : struck;
  }

  finish(): number[] {
    return [...this.plucks.finish().flatMap((pluck) => this.take(pluck)), ...this.close()];
  }

  private take({ plucked: time, considered }: MaybePluck): number[] {
    const { jump } = considered.heard;
    if (jump < SHARP || time < this.start + BEGINNING) return [];
    const { open } = this;
    if (open && time - open.time < ONE) {
      if (jump > open.jump) this.open = { time, jump };
      return [];
    }
    const struck = this.close();
    this.open = { time, jump };
    return struck;
  }

  private close(): number[] {
    const { open } = this;
    this.open = null;
    return open ? [open.time] : [];
  }
}
