/** What of a lesson can be asked now, and the next card of it that can be drawn. */
import { signal } from '../../signals/signal.ts';
import { isHere, KINDS } from '../../cards/here.ts';
import type { Card } from '../../cards/kind.ts';
import type { Item } from '../../practice/item.ts';
import { nextCard } from '../../practice/next.ts';
import type { Round } from '../../practice/round.ts';
import { soundState } from '../../sound/index.ts';
import { guitar } from '../guitar/guitar.ts';
import { later } from '../later.ts';
import { isSilent } from '../settings.ts';
import { fetchKinds, itemsOfLesson, memory, settings } from '../state.ts';
import { isWaiting } from './unheard.ts';

/** The items of a lesson that can be asked now: what is still to come is not; what needs sound, or a guitar in hand, is put off without. */
export function askable(deck: string): readonly Item[] {
  const items = itemsOfLesson(deck);
  const there = { sound: isHeard(), guitar: guitar.value !== null };
  const isAskable = ({ id, kind }: Item) =>
    isHere(kind) &&
    KINDS[kind].needs.every((need) => there[need]) &&
    !failed.value.some((one) => one.id === id);
  return items.every(isAskable) ? items : items.filter(isAskable);
}

/** Whether the phone sounds what must be heard: it is neither silent nor refused. */
export function isHeard(): boolean {
  return soundState.value !== 'refused' && !isSilent(settings.value);
}

/**
 * Has the kinds of a round's cards here. Until one was answered its cards do not wait for those that are still to come,
 * unless all of them are such; where they cannot be fetched now, what is here is asked.
 */
export async function kindsFor({ deck, open, asked }: Round): Promise<void> {
  const items = itemsOfLesson(deck);
  if (items.every(({ kind }) => isHere(kind))) return;
  const wanted = open ? items.filter(({ id }) => id === open.item) : askable(deck);
  const isWaitedFor = asked.length > 0 || !wanted.some(({ kind }) => isHere(kind));
  const fetching = (isWaitedFor ? fetchKinds() : later.then(fetchKinds)).catch(() => {});
  if (isWaitedFor) await fetching;
}

interface Drawn {
  readonly card: Card;
  readonly meet: boolean;
  readonly round: Round;
}

/** The next card that can be drawn, and the round with it open: only then is the round changed. */
export function drawable(from: Round): Drawn | null {
  for (let current = from; ; current = closed(current)) {
    const next = nextAskable(current);
    if (!next) return null;
    try {
      const card = KINDS[next.item.kind].ask(next.item, next.seed);
      return { card, meet: next.meet, round: next.round };
    } catch (error) {
      putOff(next.item, error);
    }
  }
}

/** The next card of what can be asked now; one that was just not heard only where there is no other. */
function nextAskable(current: Round) {
  const next = (items: readonly Item[]) => nextCard(current, items, memory.value.of, Date.now());
  const items = askable(current.deck);
  const isIn = (answered: number) => (item: Item) => !isWaiting(item.id, answered);
  return next(items.filter(isIn(current.asked.length))) ?? next(items.filter(isIn(Infinity)));
}

/** The round without its open card. */
export function closed(of: Round): Round {
  return { ...of, open: null };
}

/** Items that could not be asked since the page was opened: they are not asked again, and nothing of them is logged. */
export const failed = signal<readonly Item[]>([]);

export function putOff(item: Item, error: unknown): void {
  // What went wrong is for whoever mends it.
  console.error(error);
  failed.value = [...failed.value, item];
}
