import type { Chord } from '../chord.ts';
import { sameChord } from './candidates.ts';
import type { Embellishment } from './embellishmentNames.ts';
import type { Costs } from './lattice.ts';
import { isToneRuling, type Ruling, spanOf } from './ruling.ts';
import { isSpan } from './spans.ts';

/** What is ruled of single notes, by their index. */
export type Tones = ReadonlyMap<number, Embellishment | null>;

export function tonesRuled(rulings: readonly Ruling[]): Tones {
  return new Map(
    rulings.filter(isToneRuling).map(({ note, embellishment }) => [note, embellishment]),
  );
}

/**
 * Checks that rulings speak of notes that are there.
 * @throws RangeError where one does not.
 */
export function checkRulings(rulings: readonly Ruling[], notes: number): void {
  for (const ruling of rulings) {
    const [from, to] = spanOf(ruling);
    if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && from < to && to <= notes))
      throw new RangeError(
        `There are no notes ${from} to ${to - 1} to rule on: take notes 0 to ${notes - 1}.`,
      );
  }
}

/** The chords, and those ruled that are not among them. */
export function withRuled(chords: readonly Chord[], rulings: readonly Ruling[]): Chord[] {
  const all = [...chords];
  for (const { chord } of rulings)
    if (chord && !all.some((other) => sameChord(other, chord))) all.push(chord);
  return all;
}

/** Makes every reading impossible that a ruling on a chord forbids. */
export function forbid({ notes, spans, chords, costs }: Costs, rulings: readonly Ruling[]): void {
  for (const ruling of rulings) {
    const { chord } = ruling;
    if (!chord) continue;
    const [start, end] = spanOf(ruling);
    const denied = costs.filter((_, i) => !sameChord(chords[i]!, chord));
    // Groups that have none of its notes are left as they are.
    for (let from = Math.max(0, start + 1 - spans.longest); from < end; from++)
      for (let to = Math.max(from, start) + 1; to <= notes && to - from <= spans.longest; to++)
        if (isSpan(spans, from, to - from))
          for (const own of denied) own[spans.base[from]! + to - from] = Infinity;
  }
}
