import type { Goal } from '../../practice/round.ts';
import { unlock } from '../../sound/index.ts';
import { READYMADE, type Readymade } from '../readymade.ts';
import { ReadymadeList } from '../ReadymadeList.tsx';
import { beginRound } from '../round/session.ts';
import { go } from '../router.ts';
import { hasOpened, takeWritten } from '../state.ts';
import { OntoTheStair } from './OntoTheStair.tsx';

/** How many cards the first button begins with: few enough to see whether one likes it. */
const FIRST = { cards: 3 };

/** How long a round on one of the ready-made lessons is, minutes. */
const MINUTES = 5;

/**
 * Without a lesson: a picture of what this is, something to begin with in one tap, and the ways in.
 *
 * @param begins told as soon as a lesson was chosen, whose first card comes next
 */
export default function FirstVisit({ begins }: { begins(): void }) {
  const start = async (lesson: Readymade, length: number | Goal) => {
    begins();
    unlock();
    await hasOpened;
    const { id } = await takeWritten(lesson);
    await beginRound(id, length);
    go('round');
  };
  const [first] = READYMADE;
  return (
    <main class="screen today first-visit">
      <div class="to-begin">
        <h1 class="label">Skipwise</h1>
        <OntoTheStair />
        <p class="in-a-line">
          Every arpeggio of the key, on the neck and by ear, kept from one guitar lesson to the
          next.
        </p>
        <button
          type="button"
          class="button main wide"
          data-do="start"
          onClick={() => void start(first!, FIRST)}
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
      </div>
      <h2>Ready-made lessons</h2>
      <ReadymadeList
        lessons={READYMADE}
        name="Start"
        starts
        use={(lesson) => void start(lesson, MINUTES)}
      />
      <p>
        <a class="alone" href="#/settings">
          Sound and names
        </a>
      </p>
    </main>
  );
}
