/** The forms that drills have: what each says is in `Drills` of deck.ts. */
export type FormName = 'neck' | 'ear' | 'phrase' | 'played' | 'echoed' | 'time';

/** What the rooms below the cards know of a kind of card. */
interface DeclaredKind {
  /** Stands for it in links; no other kind has it. */
  readonly letter: string;
  /** What its drills are like. */
  readonly drill: FormName;
  /** The chance of a right answer without knowing: 1 by how many answers each of its cards offers, 0 where none are. */
  readonly guess: number;
  /** Whether its wrong answers name arpeggios, so that one is said to be taken for another. */
  readonly confuses: boolean;
  /** The version of the deck document that first had it: of a kind that is added, one more than `DOCUMENT_VERSION` was. */
  readonly since: number;
}

/**
 * The kinds of card a drill can ask for, a line each, in the order that reports count them in: a new one comes last.
 * Everything else about a kind is in its folder in `cards`.
 */
export const DECLARED = {
  spot: { letter: 's', drill: 'neck', guess: 1 / 7, confuses: true, since: 1 },
  place: { letter: 'p', drill: 'neck', guess: 0, confuses: true, since: 1 },
  trace: { letter: 't', drill: 'ear', guess: 1 / 4, confuses: true, since: 1 },
  outline: { letter: 'o', drill: 'phrase', guess: 1 / 7, confuses: true, since: 1 },
  follow: { letter: 'f', drill: 'phrase', guess: 0, confuses: true, since: 1 },
  order: { letter: 'r', drill: 'phrase', guess: 1 / 4, confuses: false, since: 1 },
  vary: { letter: 'v', drill: 'phrase', guess: 1 / 4, confuses: false, since: 1 },
  fill: { letter: 'l', drill: 'phrase', guess: 1 / 7, confuses: false, since: 1 },
  play: { letter: 'y', drill: 'played', guess: 0, confuses: false, since: 2 },
  echo: { letter: 'e', drill: 'echoed', guess: 0, confuses: false, since: 2 },
  pulse: { letter: 'u', drill: 'time', guess: 0, confuses: false, since: 2 },
} as const satisfies Readonly<Record<string, DeclaredKind>>;

export type KindName = keyof typeof DECLARED;

/** The kinds whose drills are of a form. */
export type KindOf<F extends FormName> = {
  [K in KindName]: (typeof DECLARED)[K]['drill'] extends F ? K : never;
}[KindName];

/** The kinds that are drilled from a phrase. */
export type PhraseKind = KindOf<'phrase'>;

/** The kinds whose wrong answers are arpeggios taken for others. */
export type ConfusingKind = {
  [K in KindName]: (typeof DECLARED)[K]['confuses'] extends true ? K : never;
}[KindName];

export const KIND_NAMES = Object.keys(DECLARED) as readonly KindName[];

/** Whether a word from outside names a kind. */
export function isKind(name: string): name is KindName {
  return Object.hasOwn(DECLARED, name);
}

export function isKindOf<F extends FormName>(form: F, kind: KindName): kind is KindOf<F> {
  return DECLARED[kind].drill === form;
}

/** The kinds whose drills are of a form, in their order. */
export function kindsOf<F extends FormName>(form: F): KindOf<F>[] {
  return KIND_NAMES.filter((kind) => isKindOf(form, kind));
}

export function isPhraseKind(kind: KindName): kind is PhraseKind {
  return isKindOf('phrase', kind);
}

export function isConfusing(kind: KindName): kind is ConfusingKind {
  return DECLARED[kind].confuses;
}

/** The chance of a right answer without knowing, 0 for a kind that nobody knows. */
export function guessOf(kind: string): number {
  return isKind(kind) ? DECLARED[kind].guess : 0;
}

export function letterOf(kind: KindName): string {
  return DECLARED[kind].letter;
}

/** The version of the deck document that a program has to know to ask for a kind. */
export function sinceOf(kind: KindName): number {
  return DECLARED[kind].since;
}

/** Inverts `letterOf`. */
export function kindOfLetter(letter: string | undefined): KindName | undefined {
  return KIND_NAMES.find((kind) => DECLARED[kind].letter === letter);
}
