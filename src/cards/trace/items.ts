import type { Contour, Deck, Drill, Rhythm } from '../../decks/deck.ts';
import { CONTOURS, RHYTHMS } from '../../decks/deck.ts';
import { instrumentFromId, instrumentId, type Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { SIZES, type Size } from '../../theory/chord.ts';
import { keyName, parseKey, type Key } from '../../theory/key.ts';
import { DEGREES } from '../../theory/scale.ts';

/** A way through the arpeggio on a degree, to be heard. */
export interface TraceItem extends Item {
  readonly key: Key;
  readonly size: Size;
  readonly contour: Contour;
  readonly instrument: Instrument;
  /** Quarter notes a minute: the same phrase twice as fast is another thing to hear. */
  readonly tempo: number;
  readonly rhythm: Rhythm;
}

/** Every degree × chord size × contour of the drill. */
export function items(deck: Deck, drill: Drill): TraceItem[] {
  if (drill.kind !== 'trace') return [];
  const { key, instrument } = deck;
  const { tempo, rhythm = 'triplets' } = drill;
  return drill.sizes.flatMap((size) =>
    drill.degrees.flatMap((degree) =>
      drill.contours.map((contour) =>
        traceItem(degree, { key, size, contour, instrument, tempo, rhythm }),
      ),
    ),
  );
}

function traceItem(
  degree: number,
  way: Pick<TraceItem, 'key' | 'size' | 'contour' | 'instrument' | 'tempo' | 'rhythm'>,
): TraceItem {
  const { key, size, contour, instrument, tempo, rhythm } = way;
  const parts = ['trace', keyName(key), degree, size, instrumentId(instrument), contour, tempo];
  // Triplets, which all phrases once were, go without saying.
  const id = [...parts, ...(rhythm === 'triplets' ? [] : [rhythm])].join(':');
  return { id, kind: 'trace', degree, strings: '', ...way };
}

/** Reads an id such as `trace:Bb major:5:triad:guitar:turn:72`, or with `:eighths` behind it; null where it is none. */
export function item(id: string): TraceItem | null {
  const [kind, keyText, degreeText, size, instrumentText, contour, tempoText, rhythm] =
    id.split(':');
  if (kind !== 'trace' || tempoText === undefined) return null;
  const key = parseKey(keyText!);
  const instrument = instrumentFromId(instrumentText!);
  const degree = Number(degreeText);
  const tempo = Number(tempoText);
  if (!key || !instrument || !SIZES.includes(size as Size)) return null;
  if (!(tempo > 0)) return null;
  if (!CONTOURS.includes(contour as Contour) || !DEGREES.includes(degree)) return null;
  if (rhythm !== undefined && !RHYTHMS.includes(rhythm as Rhythm)) return null;
  const read = traceItem(degree, {
    key,
    size: size as Size,
    contour: contour as Contour,
    instrument,
    tempo,
    rhythm: (rhythm as Rhythm | undefined) ?? 'triplets',
  });
  return read.id === id ? read : null;
}
