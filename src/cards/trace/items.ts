import type { Contour, Deck, Drill } from '../../decks/deck.ts';
import { CONTOURS } from '../../decks/deck.ts';
import { instrumentFromId, instrumentId, type Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { SIZES, type Size } from '../../theory/chord.ts';
import { keyName, parseKey, type Key } from '../../theory/key.ts';

/** A way through the arpeggio on a degree, to be heard. */
export interface TraceItem extends Item {
  readonly key: Key;
  readonly size: Size;
  readonly contour: Contour;
  readonly instrument: Instrument;
  /** Quarter notes a minute: the same phrase twice as fast is another thing to hear. */
  readonly tempo: number;
}

/** Every degree × chord size × contour of the drill. */
export function items(deck: Deck, drill: Drill): TraceItem[] {
  if (drill.kind !== 'trace') return [];
  return drill.sizes.flatMap((size) =>
    drill.degrees.flatMap((degree) =>
      drill.contours.map((contour) =>
        traceItem(deck.key, degree, size, contour, deck.instrument, drill.tempo),
      ),
    ),
  );
}

function traceItem(
  key: Key,
  degree: number,
  size: Size,
  contour: Contour,
  instrument: Instrument,
  tempo: number,
): TraceItem {
  const id = ['trace', keyName(key), degree, size, instrumentId(instrument), contour, tempo].join(
    ':',
  );
  return { id, kind: 'trace', degree, strings: '', key, size, contour, instrument, tempo };
}

/** Reads an id such as `trace:Bb major:5:triad:guitar:turn:72`; null where it is none. */
export function item(id: string): TraceItem | null {
  const [kind, keyText, degreeText, size, instrumentText, contour, tempo] = id.split(':');
  if (kind !== 'trace' || tempo === undefined) return null;
  const key = parseKey(keyText!);
  const instrument = instrumentFromId(instrumentText!);
  const degree = Number(degreeText);
  if (!key || !instrument || !SIZES.includes(size as Size)) return null;
  if (!(Number(tempo) > 0)) return null;
  if (!CONTOURS.includes(contour as Contour) || ![1, 2, 3, 4, 5, 6, 7].includes(degree))
    return null;
  const read = traceItem(key, degree, size as Size, contour as Contour, instrument, Number(tempo));
  return read.id === id ? read : null;
}
