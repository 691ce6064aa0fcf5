import type { Report } from '../../decks/report.ts';

/** The last four weeks, a mark a day: filled where there was practice. */
export function Practised({ report: { practised } }: { report: Report }) {
  const days = practised.filter(Boolean).length;
  return (
    <section>
      <h2>Days practised</h2>
      <svg class="practised" viewBox="0 0 288 12" aria-hidden="true">
        {practised.map((did, i) => (
          <rect
            key={i}
            class={did ? 'did' : undefined}
            x={i * 10 + Math.floor(i / 7) * 2 + 1}
            y="1"
            width="7"
            height="10"
          />
        ))}
      </svg>
      <p class="soft">{days} of the last 28 days; the last one is the day of the report.</p>
    </section>
  );
}
