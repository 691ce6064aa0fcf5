/** The parts that schemas are made of: each message says what to write instead, to stand behind a colon. */
import * as v from 'valibot';
import { NOT_PLAIN, PLAIN_TEXT, PLAIN_LINES } from './plain.ts';

/** A schema from a function that reads a value, or gives null for one that it cannot read. */
export const readBy = <I, O>(read: (input: I) => O | null, expected: string) =>
  v.rawTransform<I, O>(({ dataset, addIssue, NEVER }) => {
    const output = read(dataset.value);
    if (output !== null) return output;
    addIssue({ message: expected });
    return NEVER;
  });

/** A whole number. */
export function whole(lowest: number, highest: number, what: string) {
  const expected = `give ${what} as a whole number from ${lowest} to ${highest}`;
  return v.pipe(
    v.number(expected),
    v.integer(expected),
    v.minValue(lowest, expected),
    v.maxValue(highest, expected),
  );
}

function text(most: number, pattern: RegExp, plain: string) {
  return v.pipe(
    v.string('write it as text in quotes'),
    v.maxLength(most, `shorten it to ${most} characters`),
    v.regex(pattern, plain),
  );
}

/** Text on one line. */
export const line = (most: number) =>
  text(most, PLAIN_TEXT, `write it on one line, and ${NOT_PLAIN}`);

/** Text on any number of lines. */
export const lines = (most: number) => text(most, PLAIN_LINES, NOT_PLAIN);

/** A list of different things, at least one where nothing else is said. */
export function list<S extends v.GenericSchema>(
  each: S,
  most: number,
  expected: string,
  least = 1,
) {
  return v.pipe(
    v.array(each, expected),
    v.minLength(least, expected),
    v.maxLength(most, `keep it to ${most} entries`),
    v.check((all) => new Set(all.map((one) => JSON.stringify(one))).size === all.length, expected),
  );
}

/** One of some words. */
export function oneOf<const T extends readonly string[]>(names: T, what: string) {
  const quoted = names.map((name) => `"${name}"`);
  return v.picklist(names, `choose ${what} from ${quoted.join(', ')}`);
}

/** Said of an object with a word too many or too few; its path ends with that word. */
export function objectFault(issue: v.StrictObjectIssue): string {
  return issue.expected === 'never'
    ? 'take this out: nothing here has that name'
    : issue.received === 'undefined'
      ? 'add this'
      : 'write it in curly brackets, { }';
}
