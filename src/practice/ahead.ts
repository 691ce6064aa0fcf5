/** What practice that is still to come would bring: it is played through, with the rounds and the chances that the app itself has. */
import { guessOf } from '../decks/kinds.ts';
import { chanceOf, learn, type Memory } from '../memory/memory.ts';
import { noPace } from '../memory/pace.ts';
import { seedAt } from '../theory/random.ts';
import { AFTER_SHOWING, VERDICT } from './expectedGain.ts';
import type { Item } from './item.ts';
import { shareOf } from './known.ts';
import { answerCard, metCard, nextCard } from './next.ts';
import { type Goal, type Round, startRound } from './round.ts';

/** Rounds to come. */
interface Plan {
  /** What may be asked: of all items those that need nothing that is not there. */
  readonly askable: readonly Item[];
  /** When each begins, ms, in their order. */
  readonly sittings: readonly number[];
  /** How long each is, and when the next lesson is, ms; null where its day is not known. */
  readonly round: { readonly goal: Goal; readonly lesson: number | null };
  /** Of the local clock from UTC, minutes. */
  readonly offset: number;
}

/** Seconds that someone looks at what is only shown. */
const LOOKS = 5;

/** The usual chance counts as much as so many first answers of the student's own. */
const USUAL = 10;

/**
 * How much of some items would be known at a time, 0 to 1, were these rounds practised before it and nothing else.
 *
 * The rounds are played through on a copy of the memory, each answer right or wrong as the memory itself expects it:
 * what was shown a moment ago for the first time as such answers were so far, everything else by the chance of its being
 * known or guessed. Chances are
 * added up, and an answer is right whenever the sum has grown by one more: the share that is right is the expected
 * one, and no dice are thrown. Yields after each round: who waits for it can draw meanwhile.
 */
export function* knownAfter(
  items: readonly Item[],
  memory: Memory,
  plan: Plan,
  at: number,
): Generator<void, number> {
  const copy = copied(memory, items);
  // A list of its own: what is reckoned of the items is kept beside the list, for one memory.
  const askable = [...plan.askable];
  const answers = expectedAnswers(copy, plan.offset);
  for (const [sitting, begin] of plan.sittings.entries()) {
    play(
      startRound({ ...plan.round, deck: '', seed: seedAt(1, sitting), now: begin }),
      askable,
      copy,
      answers,
    );
    yield;
  }
  return shareOf(items, copy, at).recall;
}

/** Plays a round to its end, the memory learning from it. */
function play(begun: Round, items: readonly Item[], memory: Memory, answers: Answers): void {
  let [round, now] = [begun, begun.started];
  for (let next; (next = nextCard(round, items, memory, now));) {
    if (next.meet) {
      now += LOOKS * 1000;
      round = metCard(next.round, now);
    } else {
      const { right, answered, ready } = answers(next.item, next.seed, now);
      round = answerCard(next.round, items, { right, takenFor: null }, answered);
      now = ready;
    }
  }
}

type Answers = ReturnType<typeof expectedAnswers>;

/** Answers as the memory expects them; each is learned. */
function expectedAnswers(memory: Memory, offset: number) {
  let [expected, given] = [0.5, 0];
  return ({ id, kind, mark }: Item, seed: number, now: number) => {
    const known = memory.items.get(id);
    const guess = guessOf(kind);
    expected += known
      ? guess + (1 - guess) * chanceOf(memory, known, now, mark)
      : firstChance(memory);
    const right = expected >= given + 1;
    if (right) given++;
    const side = right ? 'right' : 'wrong';
    const seconds = (memory.paces.get(kind) ?? noPace).seconds[side];
    const answered = Math.round(now + 1000 * seconds);
    const time = { ms: answered - now, sounded: 0, taps: 1, hidden: false };
    const review = { device: '', n: memory.asked + 1, item: id, seed, at: answered, offset };
    learn(memory, { ...review, ...time, right, takenFor: null, grade: right ? 3 : 1 });
    return { right, answered, ready: answered + 1000 * VERDICT[side] };
  };
}

/** The chance of a right answer to what was shown a moment ago for the first time, and to begin with the usual one. */
function firstChance({ firsts, firstsRight }: Memory): number {
  return (firstsRight + USUAL * AFTER_SHOWING) / (firsts + USUAL);
}

/** A memory that knows these items alone, and may learn without the other one's knowing. */
function copied(memory: Memory, items: readonly Item[]): Memory {
  const those = items.flatMap(({ id }) => {
    const known = memory.items.get(id);
    return known ? [[id, known] as const] : [];
  });
  return structuredClone({ ...memory, items: new Map(those), trials: [] });
}
