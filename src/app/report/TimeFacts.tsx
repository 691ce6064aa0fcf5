import type { Report } from '../../decks/report.ts';
import { figureFactsWords, minuteWords } from './timeWords.ts';

/** How a student keeps time and plays freely, as far as the report tells. */
export function TimeFacts({ report: { time } }: { report: Report }) {
  const { figures, minutes } = time;
  if (figures.length === 0 && !minutes) return null;
  return (
    <section>
      <h2>In time, and playing freely</h2>
      <ul class="plain">
        {figures.map((one) => (
          <li key={one.figure}>{figureFactsWords(one)}</li>
        ))}
        {minutes && <li>{minuteWords(minutes)}</li>}
      </ul>
    </section>
  );
}
