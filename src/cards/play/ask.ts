import type { Way } from '../../decks/deck.ts';
import { takesLowest } from '../../neck/shapeChoice.ts';
import { midiAt } from '../../neck/place.ts';
import {
  fingered,
  laidOut,
  plainest,
  thinned,
  type LaidOut,
  type MemberPlace,
} from '../../neck/shapes.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Chord } from '../../theory/chord.ts';
import { letterDegree } from '../../theory/key.ts';
import { seeded } from '../../theory/random.ts';
import { beats } from '../../theory/rhythm.ts';
import { memberIn } from '../excerpt/excerpt.ts';
import { inHand } from '../excerpt/items.ts';
import type { PlayingCard } from '../playing/card.ts';
import type { PlayItem } from './items.ts';

/** An arpeggio to be played. */
export interface PlayCard extends PlayingCard<PlayItem> {
  readonly chord: Chord;
  /** Where each note lies, in their order, with its name. */
  readonly line: readonly NeckDot[];
  /** Whether it is named and not shown: then its first place is told, and the rest follows from the chord. */
  readonly named: boolean;
}

/** An even seed shows the places; an odd one, for an item well known, names the arpeggio and says where it begins. */
export function ask(item: PlayItem, seed: number): PlayCard {
  return item.excerpt ? askOfPhrase(item, seed) : askOnNeck(item, seed);
}

function askOnNeck(item: PlayItem, seed: number): PlayCard {
  const { chord, instrument, stringSet, frets, shapes, tempo, key } = item;
  const region = { strings: stringSet, frets };
  const found = laidOut(instrument, chord, region, ([lowest]) =>
    takesLowest(shapes, lowest!.member),
  );
  const midis = ({ places }: LaidOut) => places.map((place) => midiAt(instrument, place));
  const plain = found.filter((shape) => shape.form !== 'spread' && isClose(midis(shape)));
  const best = fingered(instrument, thinned(plainest(plain.length > 0 ? plain : found)));
  const alike = best.filter(
    ({ form, flaws }) => form === best[0]!.form && flaws === best[0]!.flaws,
  );
  const { places } = seeded(seed).pick(alike);
  const line = inWay(places, item.way!);
  const notes = line.map((place, i) => ({
    midi: midiAt(instrument, place),
    name: place.note,
    at: beats(i, 2),
    length: i === line.length - 1 ? beats(1) : beats(1, 2),
    place: { string: place.string, fret: place.fret },
  }));
  const named = seed % 2 === 1 && plain.length > 0;
  const dots = line.map((place) => ({ ...place, degree: letterDegree(key, place.note) }));
  return { item, seed, key, instrument, chord, notes, tempo, line: dots, named };
}

/** Whether each note follows the one before within the octave: then the first one and the chord tell all of it. */
const isClose = (midis: readonly number[]) =>
  midis.slice(1).every((midi, i) => midi - midis[i]! < 12);

function inWay(places: readonly MemberPlace[], way: Way): MemberPlace[] {
  const down = places.toReversed();
  if (way === 'down') return down;
  return way === 'up' ? [...places] : [...places, ...down.slice(1)];
}

function askOfPhrase(item: PlayItem, seed: number): PlayCard {
  const { chord, tempo } = item;
  const { key, instrument, notes } = inHand({ ...item, excerpt: item.excerpt! });
  const line = notes.map((note): NeckDot => {
    const member = memberIn(chord, note);
    const dot = { ...note.place, note: note.name, degree: letterDegree(key, note.name) };
    return member ? { ...dot, member } : dot;
  });
  return { item, seed, key, instrument, chord, notes, tempo, line, named: seed % 2 === 1 };
}
