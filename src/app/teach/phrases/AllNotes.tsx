import { step } from '../../../making/entry.ts';
import { byOctaves, lengthen, unplace, type Sketch } from '../../../theory/editing.ts';
import { valueWords } from '../../../theory/value.ts';
import { withArticle } from '../../phrases/phraseWords.ts';
import { Tool } from './Tool.tsx';
import type { Writing } from './useEntry.ts';

/** What is done to every note at once. */
export function AllNotes({ entry: { length }, edit }: Pick<Writing, 'entry' | 'edit'>) {
  const all = (change: (sketch: Sketch) => Sketch) => () =>
    edit((now) => step(now, { sketch: change(now.sketch) }));
  const asLong = (sketch: Sketch) =>
    sketch.notes.reduce((changed, _, i) => lengthen(changed, i, length), sketch);
  return (
    <section>
      <h3 class="label">All notes</h3>
      <div class="groups">
        <Tool name={`Make each ${withArticle(valueWords(length))}`} use={all(asLong)} />
        <Tool name="Find the easiest places" use={all((sketch) => unplace(sketch))} />
        <Tool name="An octave lower" use={all((sketch) => byOctaves(sketch, -1))} />
        <Tool name="An octave higher" use={all((sketch) => byOctaves(sketch, 1))} />
      </div>
    </section>
  );
}
