/**
 * A short piece of a phrase, as it stands in the ids of the items that are drilled from it:
 *
 *     ii7 5/3 4/5 4/1 V7 -1/3 3/5=1 4/3?
 *
 * A numeral begins a group of notes and says which arpeggio it outlines. `5/3` is a note by its place; `=1` how many
 * beats it lasts, and those after it, a third of one where nothing is said; `-1/3` a rest; `~` a note of its arpeggio
 * that only embellishes, as the teacher ruled; `?` the one note that is to be found.
 */
import { readChord } from '../../decks/rulings.ts';
import { fretsLeft, type Instrument } from '../../neck/instrument.ts';
import { midiAt, type Place } from '../../neck/place.ts';
import { parsePlace, placeText } from '../../neck/placeText.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import { memberOf, type Chord, type Member } from '../../theory/chord.ts';
import { keyName, letterDegree, type Key } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import { noteLabel, numeralLabel } from '../../theory/naming.ts';
import type { PhraseNote } from '../../theory/phrase.ts';
import { add, beats, compare, subtract, toNumber, type Beats } from '../../theory/rhythm.ts';
import { beatsText, parseBeats } from '../../theory/rhythmText.ts';

/** A note whose place is known. */
export interface PlacedNote extends PhraseNote {
  readonly place: Place;
  /** Ruled to be only an embellishing tone, though the arpeggio of its group has such a note. */
  readonly embellishes?: true;
}

/** Which number of an arpeggio a note of its group is; null where it only embellishes. */
export function memberIn(chord: Chord, { midi, embellishes }: PlacedNote): Member | null {
  return embellishes ? null : memberOf(chord, midi);
}

/** Notes that outline one arpeggio: `from` up to and not including `to`. */
export interface Outlined {
  readonly chord: Chord;
  readonly from: number;
  readonly to: number;
}

/** A line cut into arpeggios. */
export interface Excerpt {
  /** Of seven notes. */
  readonly key: Key;
  readonly instrument: Instrument;
  readonly notes: readonly PlacedNote[];
  readonly groups: readonly Outlined[];
  /** The note that is to be found, where one is. */
  readonly missing: number | null;
}

/** How much an excerpt may hold: groups, notes, beats of a note or a rest. */
export const MOST_EXCERPT = { groups: 4, notes: 16, beats: 4 };

const USUAL = beats(1, 3);
const FINEST = 960;

/** An excerpt in words. Inverts `readExcerpt`. */
export function writeExcerpt({
  notes,
  groups,
  missing,
}: Pick<Excerpt, 'notes' | 'groups' | 'missing'>): string {
  const words: string[] = [];
  let [at, usual] = [beats(0), USUAL];
  for (const { chord, from, to } of groups) {
    words.push(numeralLabel(chord));
    for (const [i, note] of notes.slice(from, to).entries()) {
      const rest = subtract(note.at, at);
      if (rest.n > 0) words.push(`-${beatsText(rest)}`);
      const length = compare(note.length, usual) === 0 ? '' : `=${beatsText(note.length)}`;
      const ruled = note.embellishes ? '~' : '';
      words.push(placeText(note.place) + length + ruled + (from + i === missing ? '?' : ''));
      usual = note.length;
      at = add(note.at, note.length);
    }
  }
  return words.join(' ');
}

const NOTE = /^(?<place>\d\/\d+)(?:=(?<length>[\d/]+))?(?<ruled>~)?(?<missing>\?)?$/;

const known = new WeakMap<Instrument, Map<string, Excerpt | null>>();

/**
 * The excerpt that words say, or null where they say none or say it otherwise than `writeExcerpt`. Of one instrument each
 * is read once: several kinds of card ask about the same.
 */
export function readExcerpt(words: string, key: Key, instrument: Instrument): Excerpt | null {
  let excerpts = known.get(instrument);
  if (!excerpts) known.set(instrument, (excerpts = new Map()));
  const id = `${keyName(key)} ${words}`;
  let excerpt = excerpts.get(id);
  if (excerpt === undefined) excerpts.set(id, (excerpt = excerptOf(words, key, instrument)));
  return excerpt;
}

function excerptOf(words: string, key: Key, instrument: Instrument): Excerpt | null {
  const notes: PlacedNote[] = [];
  const groups: Outlined[] = [];
  let [at, length, missing] = [beats(0), USUAL, null as number | null];
  for (const word of words.split(' ')) {
    const rest = word.startsWith('-') ? timeOf(word.slice(1)) : null;
    const note = NOTE.exec(word)?.groups;
    if (rest) at = add(at, rest);
    else if (note) {
      const place = placeOn(instrument, note.place!);
      const lasts = note.length === undefined ? length : timeOf(note.length);
      if (!place || !lasts || groups.length === 0) return null;
      if (note.missing) missing = notes.length;
      const midi = midiAt(instrument, place);
      const group = groups.pop()!;
      if (note.ruled && memberOf(group.chord, midi) === null) return null;
      notes.push({
        midi,
        name: spell(key, midi),
        at,
        length: lasts,
        place,
        ...(note.ruled && { embellishes: true }),
      });
      [at, length] = [add(at, lasts), lasts];
      groups.push({ ...group, to: notes.length });
    } else {
      const chord = readChord(word, key);
      if (!chord) return null;
      groups.push({ chord, from: notes.length, to: notes.length });
    }
  }
  const excerpt = { key, instrument, notes, groups, missing };
  const whole = groups.every(({ from, to }) => from < to) && groups.length > 0;
  const small = groups.length <= MOST_EXCERPT.groups && notes.length <= MOST_EXCERPT.notes;
  return whole && small && writeExcerpt(excerpt) === words ? excerpt : null;
}

function timeOf(text: string): Beats | null {
  const time = parseBeats(text);
  return time && time.n > 0 && time.d <= FINEST && toNumber(time) <= MOST_EXCERPT.beats
    ? time
    : null;
}

function placeOn(instrument: Instrument, text: string): Place | null {
  const place = parsePlace(text);
  const there =
    place && place.string <= instrument.tuning.length && place.fret <= fretsLeft(instrument);
  return there ? place : null;
}

/** The degree of the key that a note is, by its letter. */
export function degreeOfNote(key: Key, { midi }: Pick<PhraseNote, 'midi'>): number {
  return letterDegree(key, spell(key, midi));
}

/** Every place of a line once, with the degree it sounds. */
export function degreeDots(key: Key, notes: readonly PlacedNote[]): NeckDot[] {
  const dots = new Map<string, NeckDot>();
  for (const { place, name } of notes) {
    const degree = letterDegree(key, name);
    const text = noteLabel(name, 'degrees', key);
    dots.set(placeText(place), { ...place, note: name, degree, text });
  }
  return [...dots.values()];
}

/** What was heard, as `data-notes` tells it: `62@0 66@1/3`. */
export function notesText(notes: readonly PhraseNote[]): string {
  return notes.map(({ midi, at }) => `${midi}@${beatsText(at)}`).join(' ');
}
