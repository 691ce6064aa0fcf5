import { isBlank, isolated } from '../../decks/plain.ts';
import type { Report } from '../../decks/report.ts';
import { MOST_REPORTS } from '../../store/reports.ts';
import { hasNamesake, type Fate } from './reports.ts';
import { reportDay } from './reportWords.ts';

interface KeepingProps {
  report: Report;
  fate: Fate | undefined;
  keep(how: 'instead' | 'beside'): void;
}

/** What became of the report; and before it takes the place of another, whether it shall. */
export function Keeping({ report, fate, keep }: KeepingProps) {
  if (!fate) return null;
  const button = (how: 'instead' | 'beside', words: string) => (
    <button type="button" class="button small" onClick={() => keep(how)}>
      {words}
    </button>
  );
  return (
    <>
      <p class="soft" role="status">
        {fateWords(fate)}
        {hasNamesake(report) &&
          ' Another phone’s report on this lesson bears the same name; they are kept side by side.'}
      </p>
      {fate.is === 'newer' && (
        <div class="buttons">
          {button('beside', 'Keep both')}
          {button('instead', 'Put it in its place')}
        </div>
      )}
      {fate.is === 'older' && <div class="buttons">{button('beside', 'Keep it too')}</div>}
    </>
  );
}

function fateWords(fate: Fate): string {
  const of = (other: Report) =>
    `of ${reportDay(other, true)}${isBlank(other.name) ? '' : ` (${isolated(other.name)})`}`;
  switch (fate.is) {
    case 'kept':
    case 'same':
      return 'Kept on this device.';
    case 'full':
      return `This device keeps ${MOST_REPORTS} reports and has as many, so this one is only shown. Remove some that you no longer need.`;
    case 'newer':
      return `Not kept yet: it goes on from this student’s report ${of(fate.than)}, which is kept.`;
    case 'older':
      return `A newer report on this lesson is kept already, ${of(fate.than)}; this one is only shown.`;
    case 'beside':
      return `Kept on this device, beside this phone’s report ${of(fate.other)}: what they tell cannot both be true. Remove the one that is not.`;
  }
}
