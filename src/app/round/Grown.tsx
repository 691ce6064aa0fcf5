import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { emptyMemory, learn, type Memory } from '../../memory/memory.ts';
import { Stair } from '../../parts/Stair.tsx';
import type { Round } from '../../practice/round.ts';
import { readiness } from '../../practice/readiness.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { percent } from '../figures.ts';
import { itemsOfLesson, lessonById, log, memory, settings } from '../state.ts';
import { round } from './session.ts';

/** How long the stair stands as it was, ms. */
const BEFORE = 400;

/** The stair of the lesson as full as it was before the round, then as it is. */
export function Grown({ children }: { children: ComponentChildren }) {
  const { deck } = round.value!;
  const items = itemsOfLesson(deck);
  const [before, after] = useMemo(() => {
    const tomorrow = tomorrowOf(Date.now());
    return [memoryBefore(round.value!), memory.value.of].map((of) =>
      readiness(items, of, tomorrow),
    );
  }, []) as [Known, Known];
  const [isAfter, setAfter] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setAfter(true), BEFORE);
    return () => clearTimeout(timer);
  }, []);
  const { key } = lessonById(deck)!.deck;
  const steps = degreeSteps(key, 'triad', { ...settings.value, chordNames: false }).map(
    (step, index) => {
      const [was, is] = [before.byDegree[index] ?? 0, after.byDegree[index] ?? 0];
      return {
        ...step,
        filled: isAfter ? is : Math.min(was, is),
        ...(is > was && { before: was }),
      };
    },
  );
  return (
    <section class="sheet grown">
      <p class="figure">
        <strong>{percent(after.overall)}</strong>
        <span class="soft">
          known tomorrow morning
          {before.overall > 0 &&
            after.overall - before.overall >= 0.01 &&
            `; ${percent(before.overall)} before this round`}
        </span>
      </p>
      <Stair steps={steps} label="How much is known of each degree tomorrow morning" />
      <p class="soft">{children}</p>
    </section>
  );
}

type Known = ReturnType<typeof readiness>;

/** What would be remembered had the round not been: everything learned again but for its cards. */
function memoryBefore({ asked }: Round): Memory {
  const ofRound = new Set(asked.map(({ item, seed }) => `${seed} ${item}`));
  const before = emptyMemory();
  log.value?.reviews.forEach((review) => {
    if (!ofRound.has(`${review.seed} ${review.item}`)) learn(before, review);
  });
  return before;
}
