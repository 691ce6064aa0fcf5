import type { Peak } from './spectrum.ts';

/** A partial after an onset: how much of it is new. */
export interface Fresh {
  readonly hertz: number;
  /** Amplitude of what was not there before. */
  readonly fresh: number;
  /** Amplitude of all of it, and of the partial that was there before. */
  readonly level: number;
  readonly before: number;
}

/** Hz within which a partial before and one after may be the same. */
const SAME = 9;
/** What may be wrong with a prediction, as a part of it. */
const SLACK = 0.3;

/**
 * What is new in the peaks after an onset: from each is taken what the nearest partial before it would have become, in
 * phase, faded as much as fits best. Powers alone would lose a note that is plucked again while it rings.
 *
 * @param apart seconds from the middle of the piece before to the middle of the one after
 */
export function freshPartials(
  before: readonly Peak[],
  after: readonly Peak[],
  apart: number,
): Fresh[] {
  let from = 0;
  return after.map((peak) => {
    while (from < before.length && before[from]!.hertz < peak.hertz - SAME) from++;
    let nearest: Peak | null = null;
    for (let i = from; i < before.length && before[i]!.hertz <= peak.hertz + SAME; i++) {
      const off = Math.abs(before[i]!.hertz - peak.hertz);
      if (!nearest || off < Math.abs(nearest.hertz - peak.hertz)) nearest = before[i]!;
    }
    return {
      hertz: peak.hertz,
      level: peak.level,
      before: nearest?.level ?? 0,
      fresh: nearest ? left(nearest, peak, apart) : peak.level,
    };
  });
}

function left(was: Peak, is: Peak, apart: number): number {
  const turn = 2 * Math.PI * was.hertz * apart;
  const re = was.re * Math.cos(turn) - was.im * Math.sin(turn);
  const im = was.re * Math.sin(turn) + was.im * Math.cos(turn);
  const power = was.level * was.level;
  const gain = Math.min(1, Math.max(0, (is.re * re + is.im * im) / power));
  const rest = Math.hypot(is.re - gain * re, is.im - gain * im);
  return Math.max(0, rest - SLACK * gain * was.level);
}
