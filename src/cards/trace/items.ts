import type { Contour, Deck, DrillOf, Rhythm } from '../../decks/deck.ts';
import { CONTOURS, RHYTHMS } from '../../decks/deck.ts';
import { writeId, type IdHead } from '../../decks/id.ts';
import type { Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';

/** A way through the arpeggio on a degree, to be heard. */
export interface TraceItem extends Item {
  readonly kind: 'trace';
  readonly instrument: Instrument;
  readonly contour: Contour;
  /** Quarter notes a minute: the same phrase twice as fast is another thing to hear. */
  readonly tempo: number;
  readonly rhythm: Rhythm;
}

/** Every degree × chord size × contour of the drill. */
export function items({ key, instrument }: Deck, drill: DrillOf<'trace'>): TraceItem[] {
  const { tempo, rhythm = 'triplets' } = drill;
  return drill.sizes.flatMap((size) =>
    drill.degrees.flatMap((degree) =>
      drill.contours.map((contour) =>
        traceItem({ kind: 'trace', key, degree, size, instrument }, { contour, tempo, rhythm }),
      ),
    ),
  );
}

function traceItem(
  head: IdHead<'trace'>,
  way: Pick<TraceItem, 'contour' | 'tempo' | 'rhythm'>,
): TraceItem {
  const { contour, tempo, rhythm } = way;
  // Triplets, which all phrases once were, go without saying.
  const rest = [contour, tempo, ...(rhythm === 'triplets' ? [] : [rhythm])];
  return { id: writeId(head, rest), ...head, strings: '', ...way };
}

/** Reads an id such as `trace:Bb major:5:triad:guitar:turn:72`, or with `:eighths` behind it; null where it is none. */
export function read(head: IdHead<'trace'>, rest: readonly string[]): TraceItem | null {
  const [contourText, tempo = '', rhythmText = 'triplets', ...more] = rest;
  const contour = CONTOURS.find((one) => one === contourText);
  const rhythm = RHYTHMS.find((one) => one === rhythmText);
  if (!contour || !rhythm || more.length > 0 || !/^[1-9]\d*$/.test(tempo)) return null;
  const item = traceItem(head, { contour, tempo: Number(tempo), rhythm });
  return item.id === writeId(head, rest) ? item : null;
}
