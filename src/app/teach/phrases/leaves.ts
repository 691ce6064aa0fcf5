/** What lies over the phrase desk where there is no room beside it. */
export type Leaf = 'length' | 'note' | 'text' | 'outlines' | 'variations' | 'more' | 'keys';

/** Those with a button of their own at the foot of the desk. */
export const SHEETS = ['text', 'outlines', 'variations', 'more'] as const satisfies Leaf[];

/** By what they are opened, and what stands over them. */
export const LEAF_NAMES: Readonly<Record<Leaf, string>> = {
  length: 'How long',
  note: 'Note',
  text: 'Text',
  outlines: 'Outlines',
  variations: 'Variations',
  more: 'More',
  keys: 'Keys',
};
