import { KIND_NAMES, type KindName } from './deck.ts';

/** The letter that stands for a kind in a link. */
const LETTERS: Readonly<Record<KindName, string>> = {
  spot: 's',
  place: 'p',
  trace: 't',
  outline: 'o',
  follow: 'f',
  order: 'r',
  vary: 'v',
  fill: 'l',
};

export function letterOf(kind: KindName): string {
  return LETTERS[kind];
}

/** Inverts `letterOf`. */
export function kindOfLetter(letter: string | undefined): KindName | undefined {
  return KIND_NAMES.find((kind) => LETTERS[kind] === letter);
}
