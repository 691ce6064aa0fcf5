import { isolated } from '../../decks/plain.ts';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { lessons, opened } from '../state.ts';
import { ClassOnLesson } from './ClassOnLesson.tsx';
import { PasteReport } from './PasteReport.tsx';
import { filedReports, openReports, reportedLessons, reports } from './reports.ts';
import './Report.css';

/** All students side by side, those who need most first. */
export default function ClassScreen() {
  useEffect(() => {
    if (opened.value) void openReports();
  }, [opened.value]);
  const all = reports.value;
  const { known, unknown } = useMemo(() => filedReports(all ?? []), [all, lessons.value]);
  const [lessonId, choose] = useState<string | null>(null);
  if (!all) return <main class="screen" aria-busy="true" />;
  const reported = reportedLessons(known);
  const lesson = reported.find(({ id }) => id === lessonId) ?? reported[0];
  return (
    <main class="screen class">
      <header>
        <h1>Reports</h1>
        {all.length === 0 && (
          <p class="soft">
            None yet. Your students send one from Today; tap its link on this device, or paste it
            here. It stays on this device.
          </p>
        )}
      </header>
      <PasteReport />
      {reported.length > 1 && (
        <label class="field">
          <span class="label">Lesson</span>
          <select value={lesson!.id} onChange={(event) => choose(event.currentTarget.value)}>
            {reported.map(({ id, deck }) => (
              <option key={id} value={id}>
                {isolated(deck.title)}
              </option>
            ))}
          </select>
        </label>
      )}
      {unknown > 0 && (
        <p class="notice">
          {unknown} {unknown === 1 ? 'report waits' : 'reports wait'} for a lesson that this device
          does not have: open that lesson’s link here.
        </p>
      )}
      {lesson && <ClassOnLesson key={lesson.id} lesson={lesson} known={known} />}
    </main>
  );
}
