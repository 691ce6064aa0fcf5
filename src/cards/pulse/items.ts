import type { Deck, DrillOf } from '../../decks/deck.ts';
import { FIGURE_NAMES } from '../../decks/drills/time.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { LONGEST_ID } from '../../store/review.ts';
import { parentKey } from '../../theory/scale.ts';
import { evenFigure, phraseFigure, type Figure } from '../../theory/timing/figure.ts';
import type { FigureName } from '../../theory/timing/figureNames.ts';
import { CLICKS, type Clicks } from '../../theory/timing/clicks.ts';
import { readRhythm, rhythmWords } from '../../theory/timing/rhythmWords.ts';

/** A figure to be kept even at a tempo. It stands on no degree and lies nowhere: its id says `1:triad` for form's sake. */
export interface PulseItem extends Item {
  readonly kind: 'pulse';
  readonly instrument: Instrument;
  readonly figure: PulseFigure;
  /** Quarter notes a minute. */
  readonly tempo: number;
  readonly clicks: Clicks;
  /** Whose rhythm the figure is, the first phrase 1, where a lesson's phrases go by several; an id does not know. */
  readonly phrase?: number;
}

/** By its name; or the rhythm of a phrase, in the words of `rhythmWords`. */
type PulseFigure = FigureName | readonly string[];

/** What stands in an id before the words of a phrase's rhythm. */
const PHRASE = 'phrase';

/**
 * Every figure of the drill at every tempo with every click. A tempo comes after the next slower one of the same click,
 * the slowest one after the same with the click before it.
 */
export function items(deck: Deck, drill: DrillOf<'pulse'>): PulseItem[] {
  const head = {
    kind: 'pulse',
    key: parentKey(deck.key),
    degree: 1,
    size: 'triad',
    instrument: deck.instrument,
  } as const;
  const all = figuresOf(drill, deck).flatMap(({ figure, phrase }) => {
    const { clicks, tempos } = drill;
    const each = clicks.flatMap((click) =>
      tempos.map((tempo) => pulseItem(head, { figure, tempo, clicks: click })),
    );
    return each.map((item, i): PulseItem => {
      const before = each[i % tempos.length > 0 ? i - 1 : i - tempos.length];
      return { ...item, ...(phrase && { phrase }), ...(before && { after: before.id }) };
    });
  });
  return [...new Map(all.map((item) => [item.id, item])).values()].filter(
    ({ id }) => id.length <= LONGEST_ID,
  );
}

type DrilledFigure = Pick<PulseItem, 'figure' | 'phrase'>;

/** The figures of a drill, each phrase's rhythm in the place of `phrase`; one that cannot be told in words is left out. */
function figuresOf({ figures }: DrillOf<'pulse'>, { phrases }: Deck): DrilledFigure[] {
  return figures.flatMap((figure) => (figure === PHRASE ? rhythmsOf(phrases) : [{ figure }]));
}

/** Each rhythm once, with the first phrase that goes by it where there are several. */
function rhythmsOf(phrases: Deck['phrases']): DrilledFigure[] {
  const rhythms = new Map<string, DrilledFigure>();
  for (const [i, { notes }] of phrases.entries()) {
    const figure = rhythmWords(notes);
    const name = figure?.join(':');
    if (figure && name && !rhythms.has(name)) rhythms.set(name, { figure, phrase: i + 1 });
  }
  const all = [...rhythms.values()];
  return all.length > 1 ? all : all.map(({ figure }) => ({ figure }));
}

function pulseItem(
  head: IdHead<'pulse'>,
  what: Pick<PulseItem, 'figure' | 'tempo' | 'clicks'>,
): PulseItem {
  const { figure, tempo, clicks } = what;
  const words = typeof figure === 'string' ? [figure] : [PHRASE, ...figure];
  return { id: writeId(head, [...words, tempo, clicks]), ...head, strings: '', ...what };
}

/**
 * Reads `pulse:Bb major:1:triad:guitar:triplets:80:beat`, and `…:phrase:1/3x11:1:80:beat`, where a rhythm is in the
 * name's place; null where it is none.
 */
export function read(head: IdHead<'pulse'>, rest: readonly string[]): PulseItem | null {
  const [tempo = '', clicksText] = rest.slice(-2);
  const figure = readFigure(rest.slice(0, -2));
  const clicks = CLICKS.find((one) => one === clicksText);
  if (!figure || !clicks || !/^[1-9]\d{1,2}$/.test(tempo)) return null;
  if (head.degree !== 1 || head.size !== 'triad') return null;
  return pulseItem(head, { figure, tempo: Number(tempo), clicks });
}

function readFigure([name, ...words]: readonly string[]): PulseFigure | null {
  if (name === PHRASE) return readRhythm(words) && words;
  return words.length > 0 ? null : (FIGURE_NAMES.find((one) => one === name) ?? null);
}

/** The figure itself, over so many bars as a card needs. */
export function figureOf({ figure }: Pick<PulseItem, 'figure'>): Figure {
  if (typeof figure === 'string') return evenFigure(figure);
  return phraseFigure({ notes: readRhythm(figure)! });
}
