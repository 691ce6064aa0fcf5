/** A lesson in the making as one sentence, part by part. */
import { sizesWords } from '../../cards/arpeggio/words.ts';
import { KINDS } from '../../cards/index.ts';
import { isPhraseKind } from '../../decks/deck.ts';
import { isKindOf } from '../../decks/kinds.ts';
import { drillOf, isTogether, standing, type Draft } from '../../making/draft.ts';
import { listed } from '../../parts/english.ts';
import { chordOn } from '../../theory/chord.ts';
import { keyLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { parentKey } from '../../theory/scale.ts';
import { daysUntil } from '../days.ts';

/** What of a lesson can be tapped in its sentence. */
export type Part = 'chords' | 'key' | 'strings' | 'frets' | 'cards' | 'day';

/** What stands in the sentence for each part: `Triads`, `B♭ major`, `5–4 and 4–3`, `1–8`, `see, place, hear`, `in 7 days`. */
export function partWords(part: Part, made: Draft, naming: Naming, now: number): string {
  switch (part) {
    case 'chords':
      return chordsWords(made);
    case 'key':
      return keyLabel(made.key, naming);
    case 'strings':
      return listed(made.strings.map((set) => set.join('–'))) || 'no strings';
    case 'frets':
      return made.frets.join('–');
    case 'cards':
      return cardsWords(made);
    case 'day':
      return dayWords(made.lessonDay, now);
  }
}

/** Whether cards of the form's own chords are asked, or none are chosen yet: else chords, strings and frets say nothing. */
export function hasChords({ drills }: Pick<Draft, 'drills'>): boolean {
  const kinds = drills.filter(isTogether);
  return kinds.length === 0 || kinds.some((kind) => !isPhraseKind(kind) && !isKindOf('time', kind));
}

/** `Triads and sevenths`, `Triads ii, V and I`. */
function chordsWords({ sizes, degrees, key }: Draft): string {
  const [size] = sizes;
  if (size === undefined || degrees.length === 0) return 'No chords';
  const words = sizesWords(sizes);
  const chords = words.charAt(0).toUpperCase() + words.slice(1);
  if (degrees.length === 7) return chords;
  const numerals = degrees.map((degree) => numeralLabel(chordOn(parentKey(key), degree, size)));
  return `${chords} ${listed(numerals)}`;
}

/** So many kinds of card are named. */
const NAMED = 4;

function cardsWords(made: Draft): string {
  const kinds = [...new Set(standing(made).map((drill) => drillOf(drill, made).kind))];
  const named = kinds.slice(0, NAMED).map((kind) => KINDS[kind].words.brief);
  const more = kinds.length - named.length;
  return named.length === 0 ? 'no cards' : named.join(', ') + (more > 0 ? ` and ${more} more` : '');
}

function dayWords(lessonDay: string | null, now: number): string {
  if (lessonDay === null) return 'not set';
  const days = daysUntil(lessonDay, now);
  if (days === 0) return 'today';
  if (Math.abs(days) === 1) return days > 0 ? 'tomorrow' : 'yesterday';
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}
