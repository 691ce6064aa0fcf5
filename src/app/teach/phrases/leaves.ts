/** What lies over the phrase desk where there is no room beside it. */
export type Leaf = 'length' | 'note' | 'text' | 'outlines' | 'variations' | 'more' | 'keys';

/** Those that lie beside the desk where there is room. */
export const BESIDE = ['note', 'text', 'outlines', 'variations', 'more'] as const satisfies Leaf[];

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
