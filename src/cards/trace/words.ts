import { listed } from '../../parts/english.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { chordOn } from '../../theory/chord.ts';
import { sizesWords } from '../arpeggio/words.ts';
import type { KindWords } from '../kind.ts';
import type { TraceItem } from './items.ts';

function itemWords({ key, degree, size }: TraceItem): string {
  return `${numeralLabel(chordOn(key, degree, size))} by ear`;
}

export const words: KindWords<TraceItem> = {
  drills: 'trace what is heard',
  card: 'trace what is heard',
  brief: 'hear',
  none: 'nothing is chosen to be heard',
  soon: 'soon you hear a line, and tap the path of its degrees.',
  taken: 'heard',
  drill: ({ sizes, contours }) =>
    `hear ${sizesWords(sizes)} and find their paths, ${listed([...contours])}`,
  item: itemWords,
  itemPlace: (item) => `${itemWords(item)}, ${item.contour}`,
};
