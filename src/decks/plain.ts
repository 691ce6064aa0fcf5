/** Text that people wrote to one another: no letter in it that cannot be seen, or that turns what stands around it. */

/**
 * Control characters, lone surrogates, separators of lines, and what Unicode's bidirectional algorithm (UAX #9) and its
 * default ignorables offer for deceiving the eye. Joiners stay: Persian and some emoji are written with them.
 */
const HIDDEN = String.raw`\p{Cc}\p{Cs}\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff`;

/** Text on one line. */
export const PLAIN = new RegExp(`^[^${HIDDEN}]*$`, 'u');

/** The same on any number of lines. */
export const PLAIN_LINES = new RegExp(String.raw`^(?:[^${HIDDEN}]|\n)*$`, 'u');

/** What to say of other text. */
export const NOT_PLAIN = 'take out letters that cannot be seen or that turn the line around';

/** Whether nothing of a text is to be seen. */
export function isBlank(text: string): boolean {
  return /^[\p{Z}\p{C}\p{DI}\u2800]*$/u.test(text);
}

/**
 * What a person wrote, set apart by UAX #9's isolates from the line that it stands in: where markup cannot do it, as in the
 * name of a control or a message.
 */
export function isolated(text: string): string {
  return `\u2068${isBlank(text) ? 'no name' : text}\u2069`;
}
