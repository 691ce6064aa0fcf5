import type { Item } from '../../src/practice/item.ts';

/** An item of a lesson in B♭: a triad to be named on strings 5 and 4, where nothing else is said of it. */
export function itemOn(
  degree: number,
  {
    kind = 'spot',
    size = 'triad',
    strings = '5-4',
  }: Partial<Pick<Item, 'kind' | 'size' | 'strings'>> = {},
): Item {
  const id = `${kind}:Bb major:${degree}:${size}:guitar:${strings}:1-7`;
  return { id, kind, key: { tonic: 'Bb', scale: 'major' }, size, degree, strings };
}

/** So many of them, from the first degree up. */
export const itemsUpTo = (degree: number) =>
  Array.from({ length: degree }, (_, i) => itemOn(i + 1));
