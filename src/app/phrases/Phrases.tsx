import { Written } from '../../parts/Written.tsx';
import { useMemo } from 'preact/hooks';
import type { Deck, TaughtPhrase } from '../../decks/deck.ts';
import { explained } from '../../making/explained.ts';
import { route } from '../router.ts';
import { currentLesson, opened } from '../state.ts';
import { PhraseOut } from './PhraseOut.tsx';
import { PhraseView } from './PhraseView.tsx';
import { pathWords } from './phraseWords.ts';
import './Phrases.css';

/** The phrases of the lesson practised, and each of them by its number in the address. */
export default function Phrases() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  const deck = currentLesson()?.deck;
  const phrases = deck?.phrases ?? [];
  if (!deck || phrases.length === 0) return <NoPhrases />;
  const number = phrases.length === 1 ? 1 : Number(route.value.rest);
  const phrase = phrases[number - 1];
  if (!phrase) return <Listed deck={deck} />;
  return <Single key={number} deck={deck} phrase={phrase} number={number} />;
}

function NoPhrases() {
  return (
    <main class="screen">
      <h1>Phrases</h1>
      <p>
        This lesson has no phrases. When your teacher sends one, it is here to be seen, heard and
        played.
      </p>
      <a class="button main" href="#/today">
        Today
      </a>
    </main>
  );
}

function Listed({ deck }: { deck: Deck }) {
  const all = useMemo(
    () => deck.phrases.map((phrase) => explained(phrase, deck, phrase.rulings, phrase.hand)),
    [deck],
  );
  return (
    <main class="screen phrases">
      <header>
        <h1>Phrases</h1>
        <p class="soft">
          of “<Written text={deck.title} />”
        </p>
      </header>
      <ol>
        {all.map((one, index) => (
          <li key={index}>
            <a class="button" href={`#/phrases/${index + 1}`}>
              <span>
                {index + 1} · <span class="music">{pathWords(one)}</span>
              </span>
              <span class="soft">
                {one.phrase.notes.length} notes, <span class="music">♩</span> = {one.phrase.tempo}
              </span>
            </a>
          </li>
        ))}
      </ol>
    </main>
  );
}

function Single({ deck, phrase, number }: { deck: Deck; phrase: TaughtPhrase; number: number }) {
  const one = useMemo(() => explained(phrase, deck, phrase.rulings, phrase.hand), [phrase, deck]);
  const alone = deck.phrases.length === 1;
  return (
    <main class="screen phrase">
      <header>
        <h1>{alone ? 'The phrase' : `Phrase ${number}`}</h1>
        {!alone && (
          <a class="alone" href="#/phrases">
            All phrases
          </a>
        )}
      </header>
      {one.fault && (
        <p class="notice bad" role="status">
          {one.fault}
        </p>
      )}
      <PhraseView explained={one} />
      <PhraseOut explained={one} title={alone ? deck.title : `${deck.title}, phrase ${number}`} />
    </main>
  );
}
