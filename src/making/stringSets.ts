import type { Instrument } from '../neck/instrument.ts';

/** Strings that are played together, from the highest string number down. */
export type StringSet = readonly number[];

/** The sets that are offered: each two, and each four, strings side by side. */
export function usualSets({ tuning: { length } }: Instrument): StringSet[] {
  const from = (width: number) =>
    Array.from({ length: length - width + 1 }, (_, k) =>
      Array.from({ length: width }, (_unused, i) => length - k - i),
    );
  return [...from(2), ...from(4)];
}

/** A set as it is written down, like `6-4-3`; or a sentence saying what to write. */
export function readStringSet(
  text: string,
  { tuning: { length } }: Instrument,
): { readonly set: StringSet } | { readonly fault: string } {
  const words = text.trim().split(/\s*[-–, ]\s*/);
  const set = words.map(Number);
  if (!words.every((word) => /^\d$/.test(word))) {
    return { fault: 'Write the numbers of the strings with dashes between them, like 6-4-3.' };
  }
  const missing = set.find((string) => string < 1 || string > length);
  if (missing !== undefined) {
    return { fault: `There is no string ${missing}: take 1, the highest, to ${length}.` };
  }
  if (set.some((string, i) => i > 0 && string >= set[i - 1]!)) {
    return { fault: 'Write the lowest string first, the one with the largest number: 6-4-3.' };
  }
  return { set };
}
