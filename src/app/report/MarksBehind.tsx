import { useMemo } from 'preact/hooks';
import { marksOf } from '../../practice/lesson.ts';
import { counted } from '../figures.ts';
import type { KnownReport } from './reports.ts';

/** What the next lesson from these reports would mark easy or hard, and how many answers stand behind that. */
export function MarksBehind({ reports }: { reports: readonly KnownReport[] }) {
  const sentence = useMemo(() => sentenceOf(reports), [reports]);
  return sentence ? <p class="soft">{sentence}</p> : null;
}

function sentenceOf(some: readonly KnownReport[]): string {
  const [first] = some;
  if (!first) return '';
  const all = some.map(({ report }) => report);
  const { marks, answersTo } = marksOf(all, first.items);
  const behind = Object.keys(marks).map((id) => answersTo.get(id) ?? 0);
  if (behind.length === 0) return '';
  const answers = behind.reduce((sum, each) => sum + each, 0);
  const fewest = Math.min(...behind);
  return `The next lesson marks ${counted(behind.length, 'item')} easy or hard, on ${counted(answers, 'answer')}${
    behind.length > 1 ? `, at least ${fewest} each` : ''
  }. You can change every mark.`;
}
