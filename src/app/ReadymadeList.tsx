import type { Readymade } from './readymade.ts';
import './ReadymadeList.css';

interface ReadymadeListProps {
  lessons: readonly Readymade[];
  /** What is done with one, in a word or two. */
  name: string;
  /** Whether that starts a round. */
  starts?: boolean;
  use(lesson: Readymade): void;
}

/** Ready-made lessons, each by what is in it. */
export function ReadymadeList({ lessons, name, starts = false, use }: ReadymadeListProps) {
  return (
    <ul class="readymade">
      {lessons.map((lesson) => (
        <li key={lesson.id} class="sheet">
          <h3>{lesson.deck.title}</h3>
          <p class="soft">{lesson.words}</p>
          <button
            type="button"
            class="button"
            data-do={starts ? 'start' : undefined}
            aria-label={`${name}: ${lesson.deck.title}`}
            onClick={() => use(lesson)}
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  );
}
