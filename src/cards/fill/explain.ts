import type { Verdict } from '../../practice/item.ts';
import { MEMBER_NAMES, noteLabel, type Naming } from '../../theory/naming.ts';
import { chroma, pitchClass } from '../../theory/note.ts';
import type { PhraseNote } from '../../theory/phrase.ts';
import { scaleNotes } from '../../theory/scale.ts';
import { ordinal } from '../../parts/english.ts';
import { degreeDots, memberIn } from '../excerpt/excerpt.ts';
import type { Explanation } from '../kind.ts';
import { numeralAndName } from '../arpeggio/words.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import type { FillCard } from './ask.ts';

/** Names the missing note and what it is in its arpeggio; sounds the stretch whole, then with the answer in its place. */
export function explain(
  card: FillCard,
  verdict: Verdict,
  _answer: string,
  naming: Naming,
): Explanation {
  const { key, phrase, excerpt, missing, degree } = card;
  const note = excerpt.notes[missing]!;
  const { chord } = excerpt.groups.find(({ from, to }) => missing >= from && missing < to)!;
  const member = memberIn(chord, note);
  const taken = verdict.takenFor;
  const name = numeralAndName(chord, naming);
  return {
    name: String(degree),
    title: taken ? `${degree}, not ${taken}` : `${degree} it is`,
    sentence: `The ${ordinal(degree)} degree is missing, ${noteLabel(note.name, naming, key)}.`,
    detail:
      member !== null
        ? `It is the ${MEMBER_NAMES[member]} of ${name}.`
        : note.embellishes
          ? `It only embellishes here, though ${name} has it.`
          : `It is not in ${name}: it only embellishes.`,
    dots: degreeDots(key, excerpt.notes).map((dot) =>
      dot.string === note.place.string && dot.fret === note.place.fret
        ? { ...dot, look: 'missing' as const }
        : dot,
    ),
    sound: phraseSound(phrase),
    otherSound: taken
      ? phraseSound({
          ...phrase,
          notes: phrase.notes.with(missing, put(card, note, Number(taken))),
        })
      : null,
  };
}

/** A degree in a note's place, as near to it as can be. */
function put({ key }: FillCard, { at, length, midi }: PhraseNote, degree: number): PhraseNote {
  const name = scaleNotes(key)[degree - 1]!;
  const up = pitchClass(chroma(name) - midi);
  return { midi: midi + (up > 6 ? up - 12 : up), name, at, length };
}
