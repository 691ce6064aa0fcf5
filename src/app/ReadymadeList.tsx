import type { Deck } from '../decks/deck.ts';
import { Written } from '../parts/Written.tsx';
import { drillWords } from './deckWords.ts';
import './ReadymadeList.css';

interface ReadymadeListProps {
  decks: readonly Deck[];
  /** What is done with one, in a word or two. */
  name: string;
  /** Whether that starts a round. */
  starts?: boolean;
  use(deck: Deck): void;
}

/** Ready-made lessons, each by what is in it. */
export function ReadymadeList({ decks, name, starts = false, use }: ReadymadeListProps) {
  return (
    <ul class="readymade">
      {decks.map((deck) => (
        <li key={deck.title} class="sheet">
          <h3>
            <Written text={deck.title} />
          </h3>
          <p class="soft">{deck.drills.map(drillWords).join('; ')}</p>
          <button
            type="button"
            class="button"
            data-do={starts ? 'start' : undefined}
            aria-label={`${name}: ${deck.title}`}
            onClick={() => use(deck)}
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  );
}
