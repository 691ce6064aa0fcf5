import { useMemo } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { keyLabel } from '../../theory/naming.ts';
import { useFocusOnTitle } from '../focus.ts';
import { changeGuitar } from '../guitar/inHand.ts';
import { settings, type Lesson } from '../state.ts';
import { TempoField } from '../TempoField.tsx';
import { roundWords, type Backing } from './backing.ts';
import { OverMinutes } from './OverMinutes.tsx';

/** What a minute is played over. */
export interface MinuteChoice {
  readonly backing: Backing;
  readonly tempo: number;
  /** Whether nothing that the phone sounds comes back to its microphone. */
  readonly headphones: boolean;
}

/** Beats a minute where no phrase of the lesson says another. */
const TEMPO = 72;

export function usualChoice({ phrases }: Deck): MinuteChoice {
  return { backing: 'click', tempo: phrases[0]?.tempo ?? TEMPO, headphones: false };
}

interface BeforeProps {
  lesson: Lesson;
  choice: MinuteChoice;
  change(choice: MinuteChoice): void;
  /** What became of the minute before, where nothing was told of it. */
  notice: string | undefined;
  begin(): void;
}

/** What a free minute is, what it is played over, and what came of those before. */
export function Before({ lesson, choice, change, notice, begin }: BeforeProps) {
  const title = useFocusOnTitle();
  const { key } = lesson.deck;
  const { naming, guitar } = settings.value;
  return (
    <main class="screen minute offered">
      <header>
        <h1 ref={title} tabIndex={-1}>
          A free minute
        </h1>
        <p>
          Play what you like in {keyLabel(key, naming)}, one note at a time. The phone listens, and
          then shows where your line went. Nothing is recorded: only the notes are told.
        </p>
      </header>
      {notice && (
        <p class="notice" role="status">
          {notice}
        </p>
      )}
      {guitar.inHand ? (
        <Over {...{ lesson, choice, change }} />
      ) : (
        <p class="notice">
          It needs your guitar in hand, a quiet room, and the phone’s microphone.
        </p>
      )}
      <OverMinutes lesson={lesson} />
      <div class="last">
        {guitar.inHand ? (
          <button type="button" class="button main wide" data-do="begin" onClick={begin}>
            Begin
          </button>
        ) : (
          <button
            type="button"
            class="button main wide"
            data-do="guitar"
            onClick={() => changeGuitar({ inHand: true })}
          >
            I have my guitar in hand
          </button>
        )}
      </div>
    </main>
  );
}

/** What sounds meanwhile, and how fast. */
function Over({
  lesson: { deck },
  choice,
  change,
}: Pick<BeforeProps, 'lesson' | 'choice' | 'change'>) {
  const round = useMemo(() => roundWords(deck), [deck]);
  const { backing, headphones, tempo } = choice;
  const option = (of: Backing, label: string) => (
    <Choice
      name="backing"
      label={label}
      checked={backing === of}
      disabled={of !== 'click' && !headphones}
      change={() => change({ ...choice, backing: of })}
    />
  );
  return (
    <section>
      <Choices legend="It is played over">
        {option('click', 'a click')}
        {option('tonic', 'the tonic held')}
        {option('round', `a round of ${round}`)}
      </Choices>
      <Choices legend="The phone’s sound">
        <Choice
          label="I wear headphones"
          checked={headphones}
          change={(on) => change({ ...choice, headphones: on, backing: on ? backing : 'click' })}
        />
      </Choices>
      <p class="soft">
        {headphones
          ? 'The click goes on with each of them.'
          : 'Without headphones the click alone: the phone would take its own notes for yours.'}
      </p>
      <TempoField tempo={tempo} set={(wanted) => change({ ...choice, tempo: wanted })} />
    </section>
  );
}
