import { Facts } from '../../parts/Facts.tsx';
import { Weeks } from '../../parts/Weeks.tsx';
import { percent } from '../figures.ts';
import { spreadWords } from '../measured.ts';
import type { Lesson } from '../state.ts';
import { minutes, type Figures, type Minute } from './minutes.ts';

const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });
const dateAndTime = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  hour: '2-digit',
  minute: '2-digit',
});

/** So many days back the lines go. */
const DAYS = 31;
const DAY = 86_400_000;

/** A figure over the minutes: what it is called, what its line goes up to at least, and how it is written. */
interface Line {
  readonly name: string;
  readonly top: number;
  of(figures: Figures): number | null;
  written(value: number): string;
}

const LINES: readonly Line[] = [
  { name: 'Leaps', top: 1, of: ({ leaping }) => leaping, written: percent },
  { name: 'Longest run', top: 8, of: ({ run }) => run, written: String },
  { name: 'Arpeggios outlined', top: 7, of: ({ outlined }) => outlined, written: String },
  {
    name: 'Along the neck',
    top: 200,
    of: ({ reach }) => reach,
    written: (mm) => `${Math.round(mm / 10)} cm`,
  },
  { name: 'In time', top: 0.04, of: ({ spread }) => spread, written: spreadWords },
];

/** What came of the minutes of a month, a line for each figure; and the lines that were kept. */
export function OverMinutes({ lesson }: { lesson: Lesson }) {
  const all = (minutes.value ?? []).filter((one) => one.lesson === lesson.id);
  const [last] = all.slice(-1);
  if (!last) return null;
  const month = all.filter(({ at }) => at > last.at - DAYS * DAY);
  return (
    <>
      <Kept all={all} />
      <section class="sheet minutes">
        <h2>{month.length === 1 ? 'Your minute' : `Your ${month.length} minutes`}</h2>
        {month.length === 1 ? (
          <p class="soft">From the second one on you will see here where it goes.</p>
        ) : (
          LINES.map((line) => <OverTime key={line.name} line={line} month={month} />)
        )}
        <Facts
          caption="Your free minutes"
          head={['minute', ...LINES.map(({ name }) => name), 'notes', 'pauses', 'left out']}
          rows={month.map(({ at, figures }) => [
            dateAndTime.format(at),
            ...LINES.map(({ of, written }) => {
              const value = of(figures);
              return value === null ? '–' : written(value);
            }),
            ...[figures.notes, figures.pauses, figures.leftOut].map(String),
          ])}
        />
      </section>
    </>
  );
}

function OverTime({ line, month }: { line: Line; month: readonly Minute[] }) {
  const values = month.flatMap(({ at, figures }) => {
    const value = line.of(figures);
    return value === null ? [] : [{ at, value }];
  });
  const [first, last] = [values[0], values.at(-1)];
  if (!first || !last || values.length < 2) return null;
  const top = Math.max(line.top, ...values.map(({ value }) => value));
  const words = `${line.written(first.value)} at first, ${line.written(last.value)} last`;
  return (
    <div data-line={line.name}>
      <h3>
        {line.name} <span class="soft">{words}</span>
      </h3>
      <Weeks
        points={values.map(({ at, value }) => ({ at, share: value / top }))}
        label={`${line.name}: ${words}`}
        ends={[date.format(first.at), date.format(last.at)]}
        scale={[line.written(top), '', '0']}
      />
    </div>
  );
}

/** The lines that were kept, the last one first. */
function Kept({ all }: { all: readonly Minute[] }) {
  const kept = all.filter(({ line }) => line !== null).toReversed();
  if (kept.length === 0) return null;
  return (
    <section>
      <h2 class="label">Lines you kept</h2>
      <ul class="kept-lines">
        {kept.map(({ at, line }) => (
          <li key={at}>
            <a class="button" href={`#/minute/${at}`}>
              <span>{dateAndTime.format(at)}</span>
              <span class="soft">{line!.phrases[0]!.notes.length} notes</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
