import { useCallback, useRef } from 'preact/hooks';
import { hasLessons } from '../../store/glance.ts';
import { lazy } from '../lazy.tsx';
import { currentLesson, opened } from '../state.ts';
import '../ReadymadeList.css';
import './FirstVisit.css';

/** Whoever comes without a lesson does not wait for what shows one. */
const LessonToday = lazy(() => import('./LessonToday.tsx'));

/** Nor whoever comes with one for the first visit; its styles are in the page, for so it is drawn there. */
export const FirstVisit = lazy(() => import('./FirstVisit.tsx'));

/** What is practised now; where nothing is yet, a first visit. */
export default function Today() {
  const begun = useRef(false);
  // The same each time: a first visit is not drawn anew while its first card is on its way.
  const begins = useCallback(() => void (begun.current = true), []);
  // Who has no lesson need not wait to be told so.
  if (!opened.value && hasLessons()) return <main class="screen" aria-busy="true" />;
  // What is practised now need not be fetched on the way from a first visit to its first card.
  if (currentLesson() && !begun.current) return <LessonToday />;
  return <FirstVisit begins={begins} />;
}
