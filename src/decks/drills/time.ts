import * as v from 'valibot';
import { FIGURES, type FigureName } from '../../theory/timing/figureNames.ts';
import { CLICKS } from '../../theory/timing/clicks.ts';
import { MOST, TEMPOS, type DrilledFigure, type TimeDrill } from '../deck.ts';
import { list, objectFault, oneOf, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { bounds, type DrillForm, type Extent } from './drillForm.ts';

/** Those that have a name; and all, in the order in which links count them: a new one comes last. */
export const FIGURE_NAMES = Object.keys(FIGURES) as readonly FigureName[];
export const DRILLED_FIGURES: readonly DrilledFigure[] = [...FIGURE_NAMES, 'phrase'];

function schema(extent: Extent) {
  const { least, most } = bounds(extent, MOST.tempos);
  const tempos = list(
    whole(...TEMPOS, 'each tempo'),
    most,
    'list different tempos, like [60, 72, 84]',
    least,
  );
  return v.strictObject(
    {
      kind: v.picklist(kindsOf('time')),
      figures: list(
        oneOf(DRILLED_FIGURES, 'each figure'),
        DRILLED_FIGURES.length,
        'list different figures, like ["triplets", "eighths"]',
        least,
      ),
      tempos: v.pipe(
        tempos,
        v.check(
          (all) => all.every((tempo, i) => i === 0 || tempo > all[i - 1]!),
          'list the tempos from the slowest to the fastest, like [60, 72, 84]',
        ),
      ),
      clicks: list(
        oneOf(CLICKS, 'each click'),
        CLICKS.length,
        'list when the click sounds, like ["beat", "gone"]',
        least,
      ),
    },
    objectFault,
  );
}
type Written = v.InferInput<ReturnType<typeof schema>>;

/** In a link figures and clicks by their places in their lists, and the tempos: `2.60,72.02`. */
export const time = {
  schema,
  write: ({ kind, figures, tempos, clicks }) => ({
    kind,
    figures: [...figures],
    tempos: [...tempos],
    clicks: [...clicks],
  }),
  fold: ({ figures, tempos, clicks }) =>
    [
      figures.map((name) => DRILLED_FIGURES.indexOf(name)).join(''),
      tempos.join(),
      clicks.map((name) => CLICKS.indexOf(name)).join(''),
    ].join('.'),
  unfold(letters) {
    const [figures = '', tempos = '', clicks = ''] = letters.split('.');
    return {
      figures: Array.from(figures, (place) => DRILLED_FIGURES[Number(place)]),
      tempos: tempos.split(',').map(Number),
      clicks: Array.from(clicks, (place) => CLICKS[Number(place)]),
    };
  },
  misfit: ({ figures }, { phrases }) =>
    figures.includes('phrase') && phrases.length === 0
      ? { word: 'figures', says: 'this lesson has no phrase: add one, or leave “phrase” out.' }
      : null,
  between: () => ':',
} satisfies DrillForm<TimeDrill, Written>;
