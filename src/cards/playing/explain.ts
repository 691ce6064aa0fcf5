import { type Place } from '../../neck/place.ts';
import { placeText } from '../../neck/placeText.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Verdict } from '../../practice/item.ts';
import type { Sounding } from '../../sound/sounding.ts';
import { noteLabel, type Naming } from '../../theory/naming.ts';
import { toNumber } from '../../theory/rhythm.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import type { Explanation } from '../kind.ts';
import { heardOf, readAnswer, type PlayedAnswer } from './answer.ts';
import type { PlayingCard } from './card.ts';
import { timeOf, type Time } from './timing.ts';
import { extraWords, faultWords, timeWords } from './words.ts';

/** Beats a minute at which a line asked at leisure is sounded. */
const LEISURE = 84;

/**
 * Says which note was another and which was missing, what else was heard and how even it was; sounds what was asked and,
 * of a line that was not right, what was played.
 *
 * @param dots a dot for each note, in their order
 */
export function explainPlaying(
  card: PlayingCard,
  verdict: Verdict,
  text: string,
  naming: Naming,
  dots: readonly NeckDot[],
): Explanation {
  const { notes, key } = card;
  const answer = readAnswer(text);
  const time = timeOf(card, answer);
  const spelled = notes.map(({ name }) => noteLabel(name, naming, key)).join(' ');
  // Of a card looked back on it is not known what was played.
  const title = answer.notes.length > 0 ? 'Every note right' : 'As it was asked';
  const said = verdict.right
    ? { title, sentence: `It goes ${spelled}.` }
    : faultWords(card, answer, naming);
  const detail = [extraWords(card, answer, naming), time ? timeWords(card, time) : ''];
  const hearOther = !verdict.right || time?.verdict === 'wrong';
  return {
    ...said,
    detail: detail.filter((words) => words !== '').join(' '),
    dots: withMissing(card, answer, dots),
    sound: lineSound(card, dots),
    otherSound: hearOther ? playedSound(card, answer, time) : null,
  };
}

/** Every place once; what was not heard there looks missing. */
function withMissing(
  { notes }: PlayingCard,
  answer: PlayedAnswer,
  dots: readonly NeckDot[],
): NeckDot[] {
  const found = new Map<string, NeckDot>();
  dots.forEach((dot, i) => {
    const text = placeText(dot);
    const heard = heardOf(answer.notes[i], notes[i]!.midi);
    if (heard === 'wrong' || heard === 'missing') found.set(text, { ...dot, look: 'missing' });
    else if (!found.has(text)) found.set(text, dot);
  });
  return [...found.values()];
}

/** What is asked, as it sounds on its strings. */
export function lineSound(
  { notes, tempo }: Pick<PlayingCard, 'notes' | 'tempo'>,
  places: readonly Place[],
): Sounding {
  return phraseSound({ notes, tempo: tempo ?? LEISURE }, places);
}

/** What was played, in its own time where that was heard; null where nothing was. */
function playedSound(
  { notes, tempo: asked }: PlayingCard,
  { notes: heard }: PlayedAnswer,
  time: Time | null,
): Sounding | null {
  const tempo = asked ?? LEISURE;
  const sounds = notes.flatMap(({ at, length }, i) => {
    const note = heard[i];
    if (note?.is !== 'heard') return [];
    const own = time && note.time !== null ? (note.time * tempo) / 60 : toNumber(at);
    return [{ midi: note.midi, at: own, length: toNumber(length) }];
  });
  if (sounds.length === 0) return null;
  const first = sounds[0]!.at;
  return { tempo, notes: sounds.map((sound) => ({ ...sound, at: sound.at - first })) };
}
