import { Written } from '../../parts/Written.tsx';
import { useMemo, useState } from 'preact/hooks';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { keyLabel } from '../../theory/naming.ts';
import { currentLesson, memory, opened, settings, type Lesson } from '../state.ts';
import { Foretold } from './Foretold.tsx';
import { InTime } from './InTime.tsx';
import { KnownNeck } from './KnownNeck.tsx';
import { Paces } from './Paces.tsx';
import { Ready } from './Ready.tsx';
import { itemsIn, type Scope } from './scope.ts';
import { TakenFor } from './TakenFor.tsx';
import { OverWeeks } from './OverWeeks.tsx';
import './Known.css';

/** What is known of the lesson practised, or of all that was asked in its key: where, what for what, since when. */
export default function Known() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  const lesson = currentLesson();
  return (
    <main class="screen known">
      <h1>What you know</h1>
      {lesson ? <KnownOf lesson={lesson} /> : <Nothing where="There is no lesson here yet." />}
    </main>
  );
}

function KnownOf({ lesson }: { lesson: Lesson }) {
  const [scope, setScope] = useState<Scope>('lesson');
  const known = memory.value;
  const items = useMemo(() => itemsIn(scope, lesson), [scope, lesson, known]);
  // One moment for all pictures, or they would not agree.
  const now = useMemo(() => Date.now(), [known]);
  const asked = items.some(({ id }) => known.of.items.has(id));
  const choice = (name: Scope, label: string) => (
    <Choice
      name="scope"
      label={label}
      checked={scope === name}
      change={() => setScope(name)}
      music={name === 'key'}
    />
  );
  return (
    <>
      <Choices legend={<Written text={lesson.deck.title} />}>
        {choice('lesson', 'this lesson')}
        {choice('key', `all of ${keyLabel(lesson.deck.key, settings.value.naming)}`)}
      </Choices>
      {asked ? (
        <>
          <Ready {...{ lesson, items, now }} />
          <KnownNeck key={scope} {...{ lesson, items, now }} />
          <TakenFor {...{ lesson, items }} />
          <OverWeeks {...{ items, now }} />
          <InTime {...{ items, now }} />
          <Paces items={items} />
          <Foretold />
        </>
      ) : (
        <Nothing where="Nothing was asked here yet." />
      )}
    </>
  );
}

function Nothing({ where }: { where: string }) {
  return (
    <p>
      {where} <a href="#/today">Practise a round</a>, and you will see here what you know.
    </p>
  );
}
