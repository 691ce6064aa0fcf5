import type { Sounding } from '../../sound/sounding.ts';
import { subtract, toNumber } from '../../theory/rhythm.ts';
import { chroma, pitchClass } from '../../theory/note.ts';
import type { TimeJudgement } from '../../theory/timing/judge.ts';
import { median } from '../../theory/timing/median.ts';
import type { PulseCard } from './ask.ts';

/** The key's tonic above the open A string. */
const LOW = 57;

/** The figure as it is meant. */
export function evenSound({ plan, key }: PulseCard): Sounding {
  const { figure, tempo, slots } = plan;
  const midi = tonic(key.tonic);
  const notes = slots.map(({ at }, i) => {
    const next = slots[i + 1]?.at ?? figure.length;
    return { midi, at: toNumber(at), length: toNumber(subtract(next, at)) };
  });
  return { tempo, notes };
}

/** The taps where they fell, what is late of all of them left out; null where none of them was on the figure. */
export function tappedSound({ plan, key }: PulseCard, { onsets }: TimeJudgement): Sounding | null {
  const { figure, tempo } = plan;
  if (onsets.length === 0) return null;
  const usual = median(onsets.map(({ time, expected }) => time - expected));
  const times = onsets.map(({ time }) => Math.max(0, ((time - usual) * tempo) / 60));
  const length = 1 / figure.division;
  return { tempo, notes: times.map((at) => ({ midi: tonic(key.tonic), at, length, string: 3 })) };
}

function tonic(name: string): number {
  return LOW + pitchClass(chroma(name) - LOW);
}
