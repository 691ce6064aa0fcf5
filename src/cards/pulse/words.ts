import type { Clicks } from '../../theory/timing/clicks.ts';
import type { KindWords } from '../kind.ts';
import type { PulseItem } from './items.ts';

/** When the click sounds. */
export const CLICKED: Readonly<Record<Clicks, string>> = {
  beat: 'a click on every beat',
  bar: 'a click on the first of the bar',
  gone: 'the click gone for every second bar',
};

/** `triplets`, `the phrase’s rhythm`; where a lesson has several `the rhythm of phrase 2`. */
export function figureWords({ figure, phrase }: Pick<PulseItem, 'figure' | 'phrase'>): string {
  if (typeof figure === 'string') return figure;
  return phrase === undefined ? 'the phrase’s rhythm' : `the rhythm of phrase ${phrase}`;
}

const itemWords = (item: PulseItem) => `${figureWords(item)} at ${item.tempo}`;

export const words: KindWords<PulseItem> = {
  drills: 'keep time',
  card: 'keep time',
  brief: 'keep time',
  none: 'no phrase has a rhythm that can be told in words',
  soon: 'soon you tap each note of it, anywhere on the lower half.',
  taken: null,
  drill({ figures, tempos }) {
    const [low, high] = [tempos[0], tempos.at(-1)];
    const range = low === high ? `at ${low}` : `at ${low} to ${high}`;
    const names = figures.map((name) => (name === 'phrase' ? 'the phrase’s rhythm' : name));
    return `keep ${names.join(' and ')} even ${range}`;
  },
  item: itemWords,
  itemPlace: (item) => `${itemWords(item)}, ${CLICKED[item.clicks]}`,
};
