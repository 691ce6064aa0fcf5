/** The page killed at any moment of a round, over and over, the clock set about meanwhile: no shown verdict is lost, none is stored twice. */
import { expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { KIND_NAMES } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { DAY } from '../../src/memory/day.ts';
import { emptyMemory, learn, replay } from '../../src/memory/memory.ts';
import { answerCard, caughtUp, metCard, nextCard } from '../../src/practice/next.ts';
import { startRound, type Round } from '../../src/practice/round.ts';
import { readRound } from '../../src/practice/storedRound.ts';
import type { Review } from '../../src/store/review.ts';
import { seeded } from '../../src/theory/random.ts';
import { phraseDeck } from '../cards/phrases.ts';

const KILLS = 1000;

const deck = phraseDeck();
const onNeck = { degrees: [1, 4, 5], sizes: ['triad'], strings: [[5, 4]], frets: [1, 7] } as const;
const items = itemsOf({
  ...deck,
  drills: [
    ...kindsOf('neck').map((kind) => ({ kind, ...onNeck })),
    { kind: 'trace', degrees: [1, 4], sizes: ['triad'], contours: ['up'], tempo: 72 },
    ...deck.drills,
    { kind: 'pulse', figures: ['eighths'], tempos: [72], clicks: ['bar'] },
  ],
});

it(`keeps what was shown through ${KILLS} kills, each item and seed once`, () => {
  const random = seeded(9);
  // What the device has; a kill leaves that and nothing else.
  const log: Review[] = [];
  let onDevice = '';
  const shown: string[] = [];
  const kinds = new Set<string>();
  let now = 1_800_000_000_000;
  let memory = emptyMemory();
  let round: Round = startRound({ deck: 'one', goal: { cards: 1000 }, seed: 5, now });
  const keep = () => void (onDevice = JSON.stringify(round));
  keep();
  class Killed extends Error {}
  const mayDie = () => {
    if (random.below(4) === 0) throw new Killed();
  };
  const card = () => {
    const next = nextCard(round, items, memory, now);
    if (!next) return false;
    round = next.round;
    mayDie();
    keep();
    mayDie();
    now += 4000;
    if (next.meet) {
      round = metCard(round, now);
      return true;
    }
    const { item, seed } = next;
    const verdict = { right: random.below(3) > 0, takenFor: null };
    round = answerCard(round, items, verdict, now);
    const review: Review = {
      device: 'phone',
      n: log.length + 1,
      item: item.id,
      seed,
      at: now,
      offset: 0,
      ...verdict,
      ms: 4000,
      sounded: 0,
      taps: 1,
      hidden: false,
      grade: verdict.right ? 3 : 1,
    };
    mayDie();
    log.push(review);
    mayDie();
    learn(memory, review);
    keep();
    mayDie();
    shown.push(`${item.id} ${seed}`);
    kinds.add(item.kind);
    return true;
  };
  for (let kills = 0; kills < KILLS;) {
    try {
      if (!card()) {
        round = startRound({
          deck: 'one',
          goal: { cards: 1000 },
          seed: random.below(2 ** 31),
          now,
        });
      }
    } catch (error) {
      if (!(error instanceof Killed)) throw error;
      kills++;
      // A year back or forth, or only a while.
      now += random.pick([-365, 365, 0, 0]) * DAY + 60_000;
      memory = replay(log);
      round = caughtUp(readRound(JSON.parse(onDevice))!, items, log);
    }
  }
  const stored = log.map(({ item, seed }) => `${item} ${seed}`);
  expect(new Set(stored).size).toBe(stored.length);
  for (const one of shown) expect(stored).toContain(one);
  expect([...kinds].toSorted()).toEqual(KIND_NAMES.toSorted());
});
