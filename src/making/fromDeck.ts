/** A draft from a lesson that is there already: ready-made, earlier, received, or read from reports. */
import { KIND_NAMES, MOST, type Deck, type Drill, type KindName } from '../decks/deck.ts';
import {
  drillOf,
  madeOf,
  PLAIN_DRAFT,
  titleOf,
  usualTitle,
  type Draft,
  type MadeDrill,
  type Together,
} from './draft.ts';

/**
 * The draft that makes this deck. Its drills follow the form as far as they are alike; any other is one tuned apart,
 * so that nothing of the deck is lost.
 */
export function draftOf(deck: Deck): Draft {
  const { instrument, key, title, note, lessonDay, drills, phrases, marks = {} } = deck;
  return {
    ...drillsInForm(drills),
    instrument,
    key,
    title: title === usualTitle(key) ? '' : title,
    note,
    lessonDay,
    marks,
    phrases: phrases.map(madeOf),
    entry: null,
    taken: null,
  };
}

/** What the form holds of these drills. */
export function drillsInForm(drills: readonly Drill[]): Together & Pick<Draft, 'drills'> {
  const together = togetherOf(drills);
  return { ...together, drills: followed(drills, together) };
}

/** The choices of the first drills that have any: as a rule all have the same. */
function togetherOf(drills: readonly Drill[]): Together {
  const { degrees, sizes, strings, frets } = PLAIN_DRAFT;
  const chords = drills.find((drill) => 'degrees' in drill);
  const lying = drills.find((drill) => 'strings' in drill);
  return {
    degrees: chords?.degrees ?? degrees,
    sizes: chords?.sizes ?? sizes,
    strings: lying?.strings ?? strings,
    frets: lying?.frets ?? frets,
  };
}

function followed(drills: readonly Drill[], together: Together): MadeDrill[] {
  const alike = (kind: KindName, drill: Drill) => same(drillOf(kind, together), drill);
  const left = new Set<KindName>(KIND_NAMES);
  return drills.map((drill) => {
    const kind = [...left].find((one) => alike(one, drill));
    if (!kind) return drill;
    left.delete(kind);
    return kind;
  });
}

/** Whether two drills say the same, in whatever order their words stand. */
function same(one: Drill, other: Drill): boolean {
  const words = (drill: Drill) => JSON.stringify(Object.entries(drill).toSorted());
  return words(one) === words(other);
}

/** A text cut to so many characters, and never within one that takes two, like an emoji. */
export function shortened(text: string, most: number): string {
  return text.slice(0, most).replace(/\p{Cs}$/u, '');
}

/** A copy to go on from, told from its original by its title. */
export function copyOf(made: Draft): Draft {
  return {
    ...made,
    title: shortened(`Copy of ${titleOf(made)}`, MOST.title),
    entry: null,
    taken: null,
  };
}
