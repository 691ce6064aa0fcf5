import type { Deck } from '../../decks/deck.ts';
import type { Goal } from '../../practice/round.ts';
import { unlock } from '../../sound/index.ts';
import { useReadymade } from '../readymade.ts';
import { ReadymadeList } from '../ReadymadeList.tsx';
import { begin } from '../round/session.ts';
import { go } from '../router.ts';
import { take } from '../state.ts';
import { OntoTheStair } from './OntoTheStair.tsx';
import './FirstVisit.css';

/** How many cards the first button begins with: few enough to see whether one likes it. */
const FIRST = { cards: 3 };

/** How long a round on one of the ready-made lessons is, minutes. */
const READYMADE = 5;

/** Without a lesson: a picture of what this is, something to begin with in one tap, and the ways in. */
export function FirstVisit() {
  const decks = useReadymade();
  const start = async (deck: Deck, length: number | Goal) => {
    unlock();
    const { id } = await take(deck);
    await begin(id, length);
    go('round');
  };
  const [first] = decks;
  return (
    <main class="screen today first-visit">
      <h1 class="label">Skipwise</h1>
      <OntoTheStair />
      <p class="in-a-line">
        Every arpeggio of the key, on the neck and by ear, kept from one guitar lesson to the next.
      </p>
      <button
        type="button"
        class="button main wide"
        data-do={first && 'start'}
        disabled={!first}
        onClick={() => first && void start(first, FIRST)}
      >
        Begin with three cards
      </button>
      <ul class="ways-in">
        <li>
          <a class="button" href="#/lessons">
            I have a link
          </a>
        </li>
        <li>
          <a class="button" href="#/teach">
            I teach
          </a>
        </li>
      </ul>
      <h2>Ready-made lessons</h2>
      <ReadymadeList
        decks={decks}
        name="Start"
        starts
        use={(deck) => void start(deck, READYMADE)}
      />
      <p>
        <a href="#/settings">Sound and names</a>
      </p>
    </main>
  );
}
