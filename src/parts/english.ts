const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** `no` for 0, `four` for 4; above twelve figures. */
export function numberWord(number: number): string {
  return NUMBERS[number] ?? String(number);
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** `second` for 2. */
export function ordinal(degree: number): string {
  return ORDINALS[degree - 1] ?? String(degree);
}

/** `C`, `C and E♭`, `C, E♭ and G`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
