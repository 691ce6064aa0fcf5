import type { ComponentType } from 'preact';
import { awaitInstall } from '../install.ts';
import { beginAgain, route, type Screen } from '../router.ts';
import { erasedElsewhere, trouble, unreadable } from '../trouble.ts';
import { lazy } from '../lazy.tsx';
import Round from '../round/Round.tsx';
import Today from '../today/Today.tsx';
import { KeptOffline } from './KeptOffline.tsx';
import { UpdateNotice } from './UpdateNotice.tsx';
import './Shell.css';

/** Every screen: those on the way to the first card come with this frame, any other when it is opened. */
const SCREENS: Record<Screen, ComponentType> = {
  today: Today,
  known: lazy(() => import('../known/Known.tsx')),
  neck: lazy(() => import('../neck/NeckScreen.tsx')),
  phrases: lazy(() => import('../phrases/Phrases.tsx')),
  minute: lazy(() => import('../minute/MinuteScreen.tsx')),
  round: Round,
  lesson: lazy(() => import('../lesson/Lesson.tsx')),
  lessons: lazy(() => import('../lessons/Lessons.tsx')),
  teach: lazy(() => import('../teach/Teach.tsx')),
  send: lazy(() => import('../report/SendReport.tsx')),
  report: lazy(() => import('../report/ReportScreen.tsx')),
  class: lazy(() => import('../report/ClassScreen.tsx')),
  settings: lazy(() => import('../settings/Settings.tsx')),
  calendar: lazy(() => import('../calendar/Calendar.tsx')),
};

awaitInstall();

const PLACES: readonly [Screen, string][] = [
  ['today', 'Today'],
  ['neck', 'Neck'],
  ['lessons', 'Lessons'],
  ['teach', 'Teach'],
];

/** Screens that one comes to from one of these. */
const UNDER: Partial<Record<Screen, Screen>> = {
  known: 'today',
  phrases: 'today',
  minute: 'today',
  calendar: 'today',
  class: 'teach',
  report: 'teach',
};

/** The frame: one screen, and the places at the bottom. A round has the whole phone to itself. */
export function Shell() {
  const { screen } = route.value;
  if (erasedElsewhere.value) return <Erased />;
  const Current = SCREENS[screen];
  const at = UNDER[screen] ?? screen;
  if (screen === 'round') return <Current />;
  return (
    <>
      <div class="frame">
        <UpdateNotice />
        <KeptOffline />
        {[trouble.value, unreadable.value].map(
          (sentence) =>
            sentence && (
              <p key={sentence} class="notice bad" role="alert">
                {sentence}
              </p>
            ),
        )}
        <Current key={screen} />
      </div>
      <nav aria-label="Places">
        {PLACES.map(([place, name]) => (
          <a
            key={place}
            href={`#/${place}`}
            aria-current={at === place ? 'page' : undefined}
            onClick={place === screen ? beginAgain : undefined}
          >
            {name}
          </a>
        ))}
      </nav>
    </>
  );
}

/** In place of all that this window had. */
function Erased() {
  const again = () => {
    location.hash = '';
    location.reload();
  };
  return (
    <div class="frame">
      <main class="screen">
        <h1>Erased in another window</h1>
        <p role="alert">
          Everything kept on this device was erased in another window, so this one has stopped.
        </p>
        <button type="button" class="button main" onClick={again}>
          Begin anew
        </button>
      </main>
    </div>
  );
}
