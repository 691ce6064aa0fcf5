import { fingering } from '../../neck/fingering.ts';
import type { Place } from '../../neck/place.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Verdict } from '../../practice/item.ts';
import { chordOn } from '../../theory/chord.ts';
import { noteLabel, type Naming } from '../../theory/naming.ts';
import { degreeOfStep } from '../../theory/scale.ts';
import type { Explanation } from '../kind.ts';
import { numeralAndName } from '../arpeggio/words.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import { phraseOfSteps, type TraceCard } from './ask.ts';

/** Says which arpeggios the phrase walked and where the answer left it; shows it at a place a hand can play. */
export function explain(
  card: TraceCard,
  verdict: Verdict,
  _answer: string,
  naming: Naming,
): Explanation {
  const { key, line, phrase, item } = card;
  const chords = line.degrees.map((degree) => chordOn(key, degree, item.size));
  const taken = card.choices.find((choice) => choice.path === verdict.takenFor);
  const walked = chords.map((chord) => numeralAndName(chord, naming)).join(', then ');
  return {
    title: card.path,
    sentence: `It walks ${walked}${embellished(card)}.`,
    detail: taken ? parting(card, taken.path, naming) : '',
    dots: dotsOf(card),
    sound: phraseSound(phrase, handPlaces(card)),
    otherSound: taken ? phraseSound(phraseOfSteps(taken.heights, item)) : null,
  };
}

/** `, with a passing tone at note 5`. */
function embellished({ line }: TraceCard): string {
  if (!line.embellishment) return '';
  const { index, kind } = line.embellishment;
  return `, with a ${kind} tone at note ${index + 1}`;
}

/** `Note 3 is the 2nd degree, C, not the 4th, E♭.` */
function parting(card: TraceCard, path: string, naming: Naming): string {
  const taken = path.split(' ').map(Number);
  const index = card.line.steps.findIndex((step, i) => degreeOfStep(step) !== taken[i]);
  const degree = degreeOfStep(card.line.steps[index]!);
  const label = noteLabel(card.phrase.notes[index]!.name, naming, card.key);
  return `They part at note ${index + 1}: it is ${degree} (${label}), not ${taken[index]}.`;
}

/** The phrase's places, each once, with the degree it sounds. */
function dotsOf(card: TraceCard): NeckDot[] {
  const dots = new Map<string, NeckDot>();
  for (const [index, place] of handPlaces(card).entries()) {
    const degree = degreeOfStep(card.line.steps[index]!);
    const note = card.phrase.notes[index]!.name;
    dots.set(`${place.string}/${place.fret}`, { ...place, note, degree, text: String(degree) });
  }
  return [...dots.values()];
}

/** Where each note of the phrase is played: the easiest way for a hand. */
export function handPlaces(card: TraceCard): Place[] {
  const found = fingering(card.instrument, card.phrase.notes);
  if (!found.playable) throw new Error(found.reason);
  return found.notes.map(({ string, fret }) => ({ string, fret }));
}
