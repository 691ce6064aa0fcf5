/** Text that people wrote to one another: no letter in it that cannot be seen, or that turns what stands around it. */

/**
 * Control characters, lone surrogates, separators of lines, and what Unicode's bidirectional algorithm (UAX #9) and its
 * default ignorables offer for deceiving the eye. Joiners stay: Persian and some emoji are written with them.
 */
const HIDDEN = String.raw`\p{Cc}\p{Cs}\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff`;

/** Text on one line. */
export const PLAIN_TEXT = new RegExp(`^[^${HIDDEN}]*$`, 'u');

/** The same on any number of lines. */
export const PLAIN_LINES = new RegExp(String.raw`^(?:[^${HIDDEN}]|\n)*$`, 'u');

/** What to say of other text. */
export const NOT_PLAIN = 'take out letters that cannot be seen or that turn the line around';

/** Whether nothing of a text is to be seen. */
export function isBlank(text: string): boolean {
  return /^[\p{Z}\p{C}\p{DI}\u2800]*$/u.test(text);
}

/** Letters that run from right to left: Unicode's blocks for their scripts. */
const LEFTWARD = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/**
 * What a person wrote, to stand in a line where markup cannot set it apart, as in the name of a control: what runs from
 * right to left is set apart by UAX #9's isolates; said where nothing is to be seen of it.
 */
export function isolated(text: string): string {
  if (isBlank(text)) return 'no name';
  return LEFTWARD.test(text) ? `\u2068${text}\u2069` : text;
}
