import type { Clicks } from '../../theory/timing/plan.ts';
import type { KindWords } from '../kind.ts';
import type { PulseItem } from './items.ts';

/** When the click sounds. */
export const CLICKED: Readonly<Record<Clicks, string>> = {
  beat: 'a click on every beat',
  bar: 'a click on the first of the bar',
  gone: 'the click gone for every second bar',
};

const itemWords = ({ figure, tempo }: PulseItem) => `${figure} at ${tempo}`;

export const words: KindWords<PulseItem> = {
  drills: 'keep time',
  card: 'keep time',
  brief: 'keep time',
  taken: null,
  drill({ figures, tempos }) {
    const [low, high] = [tempos[0], tempos.at(-1)];
    const range = low === high ? `at ${low}` : `at ${low} to ${high}`;
    return `keep ${figures.join(' and ')} even ${range}`;
  },
  item: itemWords,
  itemPlace: (item) => `${itemWords(item)}, ${CLICKED[item.clicks]}`,
};
