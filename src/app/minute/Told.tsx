import { useState } from 'preact/hooks';
import { MOST } from '../../decks/deck.ts';
import { withPlaces, type Explained } from '../../making/explained.ts';
import type { MinuteTold } from '../../making/minute.ts';
import { fretsAround, midiAt } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { PhraseStrip } from '../../parts/PhraseStrip.tsx';
import { stretched, type Stretch } from '../../parts/stretch.ts';
import { pluck } from '../../sound/index.ts';
import { partOf } from '../../theory/free/written.ts';
import { useFocusOnTitle } from '../focus.ts';
import { phraseDots, stripOf } from '../phrases/drawn.ts';
import { usePhraseHearing } from '../phrases/hearing.ts';
import { settings } from '../state.ts';
import { keep, lineDeck, type Minute } from './minutes.ts';
import { factsOf, leftOutWords } from './minuteWords.ts';

interface ToldProps {
  told: MinuteTold;
  minute: Minute;
  advice: string | null;
  /** Plays another one. */
  again(): void;
}

/** What was heard of a minute: in figures, on the neck and as a strip, to be heard again and kept. */
export function Told({ told, minute, advice, again }: ToldProps) {
  const title = useFocusOnTitle();
  const leftOut = leftOutWords(told);
  return (
    <main class="screen minute told">
      <h1 ref={title} tabIndex={-1}>
        Your minute
      </h1>
      {advice && (
        <p class="notice" data-advice>
          {advice}
        </p>
      )}
      <dl class="facts">
        {factsOf(told, settings.value.naming).map(({ name, value, detail }) => (
          <div key={name} data-fact={name}>
            <dt>{name}</dt>
            <dd>
              <strong>{value}</strong> <span class="soft">{detail}</span>
            </dd>
          </div>
        ))}
      </dl>
      {leftOut && <p class="soft">{leftOut}</p>}
      <Line told={told} minute={minute} />
      <div class="buttons last">
        <a class="button" href="#/today">
          Today
        </a>
        <button type="button" class="button main" data-do="begin" onClick={again}>
          Another minute
        </button>
      </div>
    </main>
  );
}

/** The notes where they lie and as they came; a stretch of them is heard and kept alone. */
function Line({ told: { explained }, minute }: Pick<ToldProps, 'told' | 'minute'>) {
  const { instrument, key, phrase } = explained;
  const [stretch, setStretch] = useState<Stretch | null>(null);
  const [kept, setKept] = useState(false);
  const { playing, lit, toggle } = usePhraseHearing(explained, stretch);
  const [first, last] = stretch ?? [0, phrase.notes.length - 1];
  const isLong = last - first >= MOST.notes;
  const keepLine = () => {
    const line = partOf(withPlaces(explained), first, last);
    setKept(true);
    void keep({ ...minute, line: lineDeck({ key, instrument }, line) });
  };
  const choose = (index: number) => {
    setStretch(stretched(stretch, index));
    setKept(false);
  };
  return (
    <section class="line">
      <NeckOfLine explained={explained} lit={lit} />
      <PhraseStrip
        notes={stripOf(explained)}
        strings={instrument.tuning.length}
        {...{ lit, stretch, choose }}
      />
      <p class="soft" role="status">
        {kept ? KEPT : isLong ? TOO_LONG : stretch ? `Notes ${first + 1} to ${last + 1}` : CHOOSE}
      </p>
      <div class="buttons">
        <button type="button" class="button" data-do="hear" onClick={toggle}>
          {playing ? 'Stop' : 'Hear it'}
        </button>
        <button
          type="button"
          class="button"
          data-do="keep"
          disabled={kept || isLong}
          onClick={keepLine}
        >
          Keep it
        </button>
      </div>
    </section>
  );
}

const KEPT = 'Kept: you find it under “A free minute”.';
const TOO_LONG = `Tap two notes to choose ${MOST.notes} or fewer: so many can be kept.`;
const CHOOSE = 'Tap two notes to hear or keep only what lies between them.';

/** The notes where they come easiest to the hand: a pitch does not tell which string was played. */
function NeckOfLine({ explained, lit }: { explained: Explained; lit: number | null }) {
  const { places, instrument, key } = explained;
  if (!places) return null;
  return (
    <>
      <p class="soft">As it comes easiest to the hand; which string it was is not heard.</p>
      <div class="phrase-neck">
        <Neck
          instrument={instrument}
          musicKey={key}
          naming={settings.value.naming}
          frets={fretsAround(places)}
          label="Neck with your notes on it"
          dots={phraseDots(explained)}
          lit={lit === null ? null : (places[lit] ?? null)}
          tap={(place) => pluck(midiAt(instrument, place), place.string)}
        />
      </div>
    </>
  );
}
