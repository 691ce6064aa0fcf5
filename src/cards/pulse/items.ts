import type { Deck, DrillOf } from '../../decks/deck.ts';
import { FIGURE_NAMES } from '../../decks/drills/time.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { parentKey } from '../../theory/scale.ts';
import type { FigureName } from '../../theory/timing/figure.ts';
import { CLICKS, type Clicks } from '../../theory/timing/plan.ts';

/** A figure to be kept even at a tempo. It stands on no degree and lies nowhere: its id says `1:triad` for form's sake. */
export interface PulseItem extends Item {
  readonly kind: 'pulse';
  readonly instrument: Instrument;
  readonly figure: FigureName;
  /** Quarter notes a minute. */
  readonly tempo: number;
  readonly clicks: Clicks;
}

/**
 * Every figure of the drill at every tempo with every click. A tempo comes after the next slower one of the same click,
 * the slowest one after the same with the click before it.
 */
export function items({ key, instrument }: Deck, drill: DrillOf<'pulse'>): PulseItem[] {
  const head = {
    kind: 'pulse',
    key: parentKey(key),
    degree: 1,
    size: 'triad',
    instrument,
  } as const;
  return drill.figures.flatMap((figure) => {
    const item = (click: number, step: number) => {
      const [clicks, tempo] = [drill.clicks[click], drill.tempos[step]];
      return clicks && tempo ? pulseItem(head, { figure, tempo, clicks }) : undefined;
    };
    return drill.clicks.flatMap((_, click) =>
      drill.tempos.map((__, step): PulseItem => {
        const before = step > 0 ? item(click, step - 1) : item(click - 1, 0);
        return { ...item(click, step)!, ...(before && { after: before.id }) };
      }),
    );
  });
}

function pulseItem(
  head: IdHead<'pulse'>,
  what: Pick<PulseItem, 'figure' | 'tempo' | 'clicks'>,
): PulseItem {
  const { figure, tempo, clicks } = what;
  return { id: writeId(head, [figure, tempo, clicks]), ...head, strings: '', ...what };
}

/** Reads `pulse:Bb major:1:triad:guitar:triplets:80:beat`; null where it is none. */
export function read(head: IdHead<'pulse'>, rest: readonly string[]): PulseItem | null {
  const [figureText, tempo = '', clicksText, ...more] = rest;
  const figure = FIGURE_NAMES.find((one) => one === figureText);
  const clicks = CLICKS.find((one) => one === clicksText);
  if (!figure || !clicks || more.length > 0 || !/^[1-9]\d{1,2}$/.test(tempo)) return null;
  if (head.degree !== 1 || head.size !== 'triad') return null;
  return pulseItem(head, { figure, tempo: Number(tempo), clicks });
}
