import { useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { Facts } from '../../parts/Facts.tsx';
import { Stair } from '../../parts/Stair.tsx';
import type { Item } from '../../practice/item.ts';
import { readiness, type Readiness } from '../../practice/readiness.ts';
import { dayName, startAhead } from '../days.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { percent } from '../figures.ts';
import { memory, settings, type Lesson } from '../state.ts';

const WEEK = 7 * 86_400_000;

/** How ready it is tomorrow, and how ready it were on lesson day if nothing more were asked: overall and by degree. */
export function Ready(props: { lesson: Lesson; items: readonly Item[]; now: number }) {
  const { items, now } = props;
  const { key, lessonDay } = props.lesson.deck;
  const [later, setLater] = useState(false);
  const lessonAt = startAhead(lessonDay, now);
  const when = lessonAt === null ? 'in a week' : `on ${dayName(lessonDay!, now)}`;
  const tomorrow = readiness(items, memory.value.of, tomorrowOf(now));
  const then = readiness(items, memory.value.of, lessonAt ?? now + WEEK);
  const shown = later ? then : tomorrow;
  const steps = degreeSteps(key, 'triad', { ...settings.value, chordNames: false }).map(
    (step, index) => ({ ...step, filled: shown.byDegree[index] ?? 0 }),
  );
  return (
    <section class="sheet">
      <h2>How ready</h2>
      <p class="ready-figure">
        <strong>{percent(shown.overall)}</strong>
        <span class="soft">
          known {later ? when : 'tomorrow morning'} if nothing more were asked; {tomorrow.asked} of{' '}
          {tomorrow.of} asked so far
        </span>
      </p>
      <Stair
        steps={steps}
        label={`How ready each degree is ${later ? when : 'tomorrow morning'}`}
      />
      <Choices legend="When">
        <Choice name="when" label="tomorrow" checked={!later} change={() => setLater(false)} />
        <Choice
          name="when"
          label={lessonAt !== null ? 'on lesson day' : when}
          checked={later}
          change={() => setLater(true)}
        />
      </Choices>
      <Facts
        caption="How ready each degree is"
        head={['degree', 'tomorrow morning', when]}
        rows={rowsOf(
          steps.map(({ numeral }) => numeral),
          tomorrow,
          then,
        )}
      />
    </section>
  );
}

/** A row for each degree that the lesson has, and one for all. */
function rowsOf(numerals: readonly string[], tomorrow: Readiness, then: Readiness): string[][] {
  const degrees = numerals.flatMap((numeral, index) => {
    const share = tomorrow.byDegree[index];
    return share == null ? [] : [[numeral, percent(share), percent(then.byDegree[index]!)]];
  });
  return [...degrees, ['all', percent(tomorrow.overall), percent(then.overall)]];
}
