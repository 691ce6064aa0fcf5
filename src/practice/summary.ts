import type { Memory } from '../memory/memory.ts';
import { type Item } from './item.ts';
import { isLeft } from './owed.ts';
import type { Round } from './round.ts';

/** What a round came to. */
interface Summary {
  readonly cards: number;
  /** Items that were asked, and how many of them were right at the first asking. */
  readonly asked: number;
  readonly rightFirst: number;
  /** Items answered right for the first time ever; items whose recall stands higher than before. */
  readonly fresh: readonly Item[];
  readonly grown: readonly Item[];
  /** Items whose last answer was wrong: they come again. */
  readonly missed: readonly Item[];
  /** Of those the ones that were missed so often that they are left for another day. */
  readonly left: readonly Item[];
  /** Items of the deck never asked yet. */
  readonly unseen: number;
}

/** What grew in a round, and what is left to do. The memory is that after the round. */
export function summarise(round: Round, items: readonly Item[], memory: Memory): Summary {
  const byId = new Map(items.map((item) => [item.id, item]));
  const last = new Map(round.asked.map((asked) => [asked.item, asked]));
  const first = new Map(round.asked.toReversed().map((asked) => [asked.item, asked]));
  const those = (test: (id: string) => boolean) =>
    [...last.keys()].filter(test).flatMap((id) => byId.get(id) ?? []);
  return {
    cards: round.asked.length,
    asked: first.size,
    rightFirst: [...first.values()].filter(({ right }) => right).length,
    fresh: those((id) => first.get(id)!.isNew && last.get(id)!.right),
    grown: those((id) => !first.get(id)!.isNew && last.get(id)!.right),
    missed: those((id) => !last.get(id)!.right),
    left: those((id) => !last.get(id)!.right && isLeft(round, id)),
    unseen: items.filter(({ id }) => !memory.items.has(id)).length,
  };
}
