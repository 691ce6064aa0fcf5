/**
 * A view of the neck as the readable end of an address:
 * `Bb-major/seventh-2-to-4/degrees/strings-5-4/drop-D+2/left-handed`. Sharps are written out, because an address can
 * have only one `#`. One shape is `shape-5.3-5.6-4.5`, a place each. What is as in a plain view on a guitar is left out.
 */
import { GUITAR, instrumentId, type Instrument } from '../../neck/instrument.ts';
import { instrumentFault, instrumentFromId } from '../../neck/instrumentFault.ts';
import type { Place } from '../../neck/place.ts';
import { SIZES } from '../../theory/chord.ts';
import { keyName, parseKey } from '../../theory/key.ts';
import { hasSevenNotes } from '../../theory/scale.ts';
import { bends, shapeOf } from './shape.ts';
import { isOn, plainView, SHOWN, type OneShape, type View, type Where } from './view.ts';

/** The longest that a view of nine strings comes to, and some more. */
const LONGEST = 300;

/** The view as an address writes it, without `#/neck/`. Inverted by `readView`. */
export function writeView(view: View): string {
  const { key, size, degree, from, shown, where, instrument } = view;
  const id = instrumentId(instrument);
  const usual = instrumentFromId(id)!;
  const words = [keyName(key).replaceAll(' ', '-')];
  if (degree !== null) words.push([size, ...(from === null ? [] : [from, 'to']), degree].join('-'));
  else if (size !== 'triad') words.push(`${size}s`);
  if (shown !== 'names') words.push(shown);
  if (where) words.push(whereWord(where));
  if (id !== instrumentId(GUITAR)) words.push(id);
  if (instrument.frets !== usual.frets) words.push(`${instrument.frets}-frets`);
  if (instrument.leftHanded) words.push('left-handed');
  return words.join('/').replaceAll('#', 'sharp');
}

/** A shape by its places, as more than one may begin at the same; and by the string that its lowest note came from. */
function whereWord(where: NonNullable<Where>): string {
  if ('frets' in where) return listed('frets', where.frets);
  if ('strings' in where) return listed('strings', where.strings);
  const { shape, across } = where;
  const word = ['shape', ...shape.map(({ string, fret }) => `${string}.${fret}`)].join('-');
  return across === 0 ? word : `${word}-from-${shape[0]!.string + across}`;
}

const listed = (word: string, numbers: readonly number[]) => [word, ...numbers].join('-');

/** The view that an address names, or what is wrong with it as a sentence. Inverts `writeView`. */
export function readView(address: string): View | { readonly fault: string } {
  const text = decoded(address);
  if (text === null || text.length > LONGEST) return { fault: damaged('it is damaged.') };
  const [keyWord = '', ...words] = text.replaceAll('sharp', '#').split('/');
  const key = parseKey(keyWord.replaceAll('-', ' '));
  if (!key) return { fault: damaged(`“${shortened(keyWord)}” is no key.`) };
  let view = plainView(key);
  let strung: Instrument = GUITAR;
  let where: Where = null;
  for (const word of words) {
    const part = readWord(word);
    if (part === null) return { fault: damaged(`“${shortened(word)}” says nothing about a neck.`) };
    if ('fault' in part) return { fault: damaged(part.fault) };
    if ('strung' in part) strung = { ...strung, ...part.strung };
    else if ('where' in part) where = part.where;
    else view = { ...view, ...part };
  }
  const unstrung = instrumentFault(strung);
  if (unstrung) return { fault: damaged(unstrung) };
  if (!isOn(strung, where))
    return { fault: damaged('its strings or frets are not on the instrument.') };
  if (view.degree !== null && (!hasSevenNotes(key.scale) || view.from === view.degree))
    return { fault: damaged('its arpeggio is not in the key.') };
  view = { ...view, where, instrument: strung };
  const oneShape = where !== null && 'shape' in where ? (where as OneShape) : null;
  if (oneShape && !shapeOf(view)) return { fault: damaged('its shape is none of the arpeggio.') };
  if (oneShape && oneShape.across !== 0 && !bends(view))
    return { fault: damaged('its shape does not come from those strings.') };
  if (view.shown === 'fingers' && !oneShape)
    return { fault: damaged('fingers are shown on one shape only.') };
  return view;
}

type Part =
  | Partial<View>
  | { readonly strung: Partial<Instrument> }
  | { readonly where: Where }
  | { readonly fault: string };

/** What one word of an address says, or null. */
function readWord(word: string): Part | null {
  const shown = SHOWN.find((name) => name === word);
  if (shown) return { shown };
  if (word === 'left-handed') return { strung: { leftHanded: true } };
  const frets = /^(\d\d)-frets$/.exec(word);
  if (frets) return { strung: { frets: Number(frets[1]) } };
  const stretch = /^frets-(\d\d?)-(\d\d?)$/.exec(word);
  if (stretch) return { where: { frets: [Number(stretch[1]), Number(stretch[2])] } };
  const strings = /^strings((?:-[1-9]){1,9})$/.exec(word);
  if (strings) return { where: { strings: strings[1]!.slice(1).split('-').map(Number) } };
  if (word.startsWith('shape-')) return readShape(word);
  return readChord(word) ?? readInstrument(word);
}

function readShape(word: string): Part | null {
  const [, places, from] = /^shape((?:-[1-9]\.\d\d?){1,7})(?:-from-(\d\d?))?$/.exec(word) ?? [];
  if (!places) return null;
  const shape = places
    .slice(1)
    .split('-')
    .map((place) => place.split('.').map(Number))
    .map(([string, fret]): Place => ({ string: string!, fret: fret! }));
  const across = from === undefined ? 0 : Number(from) - shape[0]!.string;
  return across === 0 || across === 1 || across === -1 ? { where: { shape, across } } : null;
}

function readChord(word: string): Partial<View> | null {
  const [, name, plural, from, degree] =
    /^([a-z]+?)(?:(s)|(?:-([1-7])-to)?-([1-7]))$/.exec(word) ?? [];
  const size = SIZES.find((known) => known === name);
  if (!size) return null;
  if (plural) return { size };
  return { size, degree: Number(degree), from: from ? Number(from) : null };
}

function readInstrument(word: string): Part | null {
  const instrument = instrumentFromId(word);
  if (instrument) {
    const { name, tuning, frets, scaleLength, capo } = instrument;
    return { strung: { name, tuning, frets, scaleLength, capo } };
  }
  const tuning = word.replace(/\+.*/, '').split('.');
  const fault = tuning.length > 1 ? instrumentFault({ ...GUITAR, tuning }) : null;
  return fault === null ? null : { fault };
}

function decoded(address: string): string | null {
  try {
    return decodeURIComponent(address);
  } catch {
    return null;
  }
}

const shortened = (word: string) => (word.length > 24 ? `${word.slice(0, 24)}…` : word);

const damaged = (what: string) =>
  `This link does not say what to show: ${what} Here is a plain neck instead; ask for the link again.`;
