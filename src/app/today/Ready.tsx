import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { Stair } from '../../parts/Stair.tsx';
import { readiness } from '../../practice/readiness.ts';
import { dayName } from '../days.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { percent } from '../figures.ts';
import { itemsOfLesson, memory, settings, type Lesson } from '../state.ts';
import { useAhead } from './useAhead.ts';

interface ReadyProps {
  lesson: Lesson;
  now: number;
  /** When the next lesson is, ms; null where it is not known, or past. */
  lessonAt: number | null;
  /** How long a round of each day would be. */
  minutes: number;
}

/** How ready the lesson is: the staircase as full as each degree is known, a number with a meaning, and what practice would bring. */
export function Ready(props: ReadyProps) {
  const { lesson, now } = props;
  const tomorrow = readiness(itemsOfLesson(lesson.id), memory.value.of, tomorrowOf(now));
  const steps = degreeSteps(lesson.deck.key, 'triad', { ...settings.value, chordNames: false }).map(
    (step, index) => ({ ...step, filled: tomorrow.byDegree[index] ?? 0 }),
  );
  return (
    <section class="sheet ready">
      {tomorrow.asked > 0 ? (
        <Figure {...props} known={tomorrow.overall} />
      ) : (
        <p class="soft">Each step fills as its degree comes to be known.</p>
      )}
      <Stair steps={steps} label="How much is known of each degree tomorrow morning" />
      <div class="foot">
        <p class="soft">
          {tomorrow.asked} of {tomorrow.of} asked so far
        </p>
        {tomorrow.asked > 0 && (
          <a class="alone" href="#/known">
            Look closer
          </a>
        )}
      </div>
      <Growth lesson={lesson} now={now} />
    </section>
  );
}

/** What is known tomorrow, and what will be by the lesson with practice, where that is more. */
function Figure({ known, ...props }: ReadyProps & { known: number }) {
  const ahead = useAhead(props);
  const foretold = ahead && foretoldWords(ahead.known, known);
  return (
    <p class="figure">
      <strong>{percent(known)}</strong>
      <span class="soft">
        <span>
          known tomorrow morning
          {foretold && (
            <>
              ; <b>{foretold}</b> by {byWhen(props, ahead.at)} with {props.minutes} minutes{' '}
              {ahead.rounds === 1 ? 'more' : 'a day'}
            </>
          )}
        </span>
      </span>
    </p>
  );
}

/** After fewer days of practice than these, what practice brings is foretold in whole tens, the lower one. */
const SURE = 3;

/** `84 %`, in the first days `about 80 %`: what is foretold, where it is more than is known. */
function foretoldWords(ahead: number, known: number): string | null {
  const isSure = memory.value.of.days.size >= SURE;
  const told = isSure ? ahead : Math.floor(10 * ahead) / 10;
  if (told - known < 0.01) return null;
  return isSure ? percent(told) : `about ${percent(told)}`;
}

/** `Tuesday`, `tomorrow`, or `next week` where no lesson is near. */
function byWhen({ lesson, lessonAt, now }: ReadyProps, at: number): string {
  if (at === tomorrowOf(now)) return 'then';
  return lessonAt === at ? dayName(lesson.deck.lessonDay!, now) : 'next week';
}

/** How what is known has grown, from the second day on: it comes after the first picture. */
function Growth({ lesson, now }: { lesson: Lesson; now: number }) {
  const [Line, setLine] = useState<ComponentType<{ lesson: Lesson; now: number }> | null>(null);
  useEffect(() => {
    if (memory.value.of.days.size > 1)
      void import('./GrowthLine.tsx').then(({ GrowthLine }) => setLine(() => GrowthLine));
  }, []);
  return Line && <Line lesson={lesson} now={now} />;
}
