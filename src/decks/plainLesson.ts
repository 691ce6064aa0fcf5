/**
 * The link of a lesson of arpeggios alone, to be seen, placed or heard, on an instrument of the list: read by hand, for the
 * schema is half of what it would take to fetch on the way to such a lesson's first card. Whatever else a link says, and
 * whatever is wrong with it, is for `link.ts` to read and to tell of.
 */
import { GUITAR, fretsLeft, INSTRUMENTS, type Instrument } from '../neck/instrument.ts';
import { parseKey } from '../theory/key.ts';
import { DEGREES, hasSevenNotes } from '../theory/scale.ts';
import { arpeggiosOf, isWide } from './arpeggios.ts';
import { MOST, TEMPOS, type Deck, type EarDrill, type NeckDrill } from './deck.ts';
import { readStringSet, unfoldEar, unfoldNeck, writeEar, writeNeck } from './drills/chordWords.ts';
import { isKindOf, kindOfLetter, type KindOf } from './kinds.ts';
import { FIELD } from './letters.ts';
import { PLAIN_LINES, PLAIN_TEXT } from './plain.ts';
import { documentId, readDay, unfoldDay, writeHead } from './writing.ts';

type PlainDrill = NeckDrill | EarDrill;

/** A deck, its document, and its id. */
export interface PlainLesson {
  readonly id: string;
  readonly deck: Deck;
  readonly document: unknown;
}

/** The lesson that letters say, the same that `link.ts` reads; null where it is no plain one, or not right. */
export function plainLesson(letters: string): PlainLesson | null {
  const [title = '', note = '', day, keyText = '', named, drillLetters, ...more] =
    letters.split(FIELD);
  const key = PLAIN_TEXT.test(keyText) && keyText.length <= MOST.key ? parseKey(keyText) : null;
  const instrument = named
    ? INSTRUMENTS.find(({ name }) => JSON.stringify(name) === named)
    : GUITAR;
  const lessonDay = day ? readDay(unfoldDay(day)) : null;
  const isText = title.length <= MOST.title && PLAIN_TEXT.test(title);
  const areLines = note.length <= MOST.note && PLAIN_LINES.test(note);
  if (!key || !hasSevenNotes(key.scale) || !instrument || more.length > 0) return null;
  if (!isText || !areLines || (day && !lessonDay)) return null;
  const drills = drillLetters ? drillsIn(drillLetters, instrument) : [];
  if (!drills) return null;
  const deck: Deck = { title, note, lessonDay, instrument, key, drills, phrases: [] };
  const document = { ...writeHead(deck, instrument.name), drills: drills.map(written) };
  return { id: documentId(document), deck, document };
}

function drillsIn(letters: string, instrument: Instrument): PlainDrill[] | null {
  const read = letters.split(' ').map((one) => plainDrill(one, instrument));
  const drills = read.filter((drill) => drill !== null);
  const areAll = drills.length === read.length && drills.length <= MOST.drills;
  return areAll && arpeggiosOf(drills) <= MOST.arpeggios && !drills.some(isWide) ? drills : null;
}

function plainDrill(letters: string, instrument: Instrument): PlainDrill | null {
  const kind = kindOfLetter(letters[0]);
  if (!kind) return null;
  if (isKindOf('neck', kind)) return neckDrill(kind, letters.slice(1), instrument);
  return isKindOf('ear', kind) ? earDrill(kind, letters.slice(1)) : null;
}

function neckDrill(
  kind: KindOf<'neck'>,
  letters: string,
  instrument: Instrument,
): NeckDrill | null {
  const { sizes, degrees = DEGREES, frets, ...words } = unfoldNeck(letters);
  const strings = words.strings.map(readStringSet);
  const [low = NaN, high = NaN] = frets;
  const lies = low >= 0 && low <= high && high <= fretsLeft(instrument);
  if (!lies || !areChords(sizes, degrees) || !areDifferent(words.strings)) return null;
  if (strings.length > MOST.stringSets || !areOn(strings, instrument)) return null;
  const { shapes } = words;
  if ('shapes' in words && !shapes) return null;
  return { kind, degrees, sizes, strings, frets: [low, high], ...(shapes && { shapes }) };
}

function earDrill(kind: KindOf<'ear'>, letters: string): EarDrill | null {
  const { sizes, degrees = DEGREES, contours, tempo, ...rhythm } = unfoldEar(letters);
  const isTempo = Number.isInteger(tempo) && tempo >= TEMPOS[0] && tempo <= TEMPOS[1];
  if (!isTempo || !areChords(sizes, degrees) || !areDifferent(contours)) return null;
  return { kind, degrees, sizes, contours, tempo, ...rhythm };
}

const written = (drill: PlainDrill) => ({
  kind: drill.kind,
  ...('strings' in drill ? writeNeck(drill) : writeEar(drill)),
});

function areChords<S>(sizes: readonly (S | undefined)[], degrees: readonly number[]): sizes is S[] {
  const areOfKey = degrees.every((degree) => DEGREES.includes(degree));
  return areDifferent(sizes) && areDifferent(degrees) && areOfKey;
}

/** Whether there are some, none of them unknown or twice. */
function areDifferent<T>(some: readonly (T | undefined)[]): some is T[] {
  return some.length > 0 && !some.includes(undefined) && new Set(some).size === some.length;
}

function areOn(
  sets: readonly (readonly number[] | null)[],
  { tuning }: Instrument,
): sets is (readonly number[])[] {
  return sets.every((set) => set !== null && set.every((string) => string <= tuning.length));
}
