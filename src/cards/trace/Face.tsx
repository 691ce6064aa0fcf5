import { useEffect, useMemo, useState } from 'preact/hooks';
import { fretsAround, midiAt } from '../../neck/place.ts';
import { Hops } from '../../parts/Hops.tsx';
import { Neck } from '../../parts/Neck.tsx';
import { PlayAlong } from '../../parts/PlayAlong.tsx';
import { keySounding, play, pluck } from '../../sound/index.ts';
import { keyLabel } from '../../theory/naming.ts';
import { beatsText, toNumber } from '../../theory/rhythm.ts';
import { CardFrame } from '../CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import type { TraceCard } from './ask.ts';
import { placesOf, soundingOf } from './explain.ts';
import { degreeOfStep, groupStarts } from './line.ts';
import './Face.css';

const COUNTS = [
  '',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** The slower hearing's part of the tempo. */
const SLOWER = 0.6;

/** The key is sounded, then the phrase; four paths to choose from. Nothing is drawn of it before the answer. */
export function Face(props: FaceProps<TraceCard>) {
  const { card, verdict, explanation, shown } = props;
  const { key, phrase, instrument } = card;
  const [chosen, setChosen] = useState<string | null>(null);
  const [along, setAlong] = useState(false);
  const [lit, setLit] = useState<number | null>(null);
  const places = useMemo(() => placesOf(card), [card]);

  const hear = (speed = 1) => {
    const playing = play(soundingOf(phrase, places), {
      speed,
      onNote: setLit,
      onEnd: () => setLit(null),
    });
    if (!verdict) props.sounded(playing.ms);
  };
  const hearKey = (then?: () => void) => {
    const playing = play(keySounding(key, shown.keySound), then ? { onEnd: then } : {});
    if (!verdict) props.sounded(playing.ms);
  };
  const hearAnswer = () => {
    const other = explanation?.otherSound;
    play(soundingOf(phrase, places), {
      onNote: setLit,
      onEnd: () => {
        setLit(null);
        if (other) play(other);
      },
    });
  };

  useEffect(() => hearKey(hear), []);

  useEffect(() => {
    if (verdict) hearAnswer();
  }, [verdict]);

  const choose = (path: string) => {
    if (chosen !== null) return;
    setChosen(path);
    props.answer(path, 1);
  };
  const drawn = {
    instrument,
    musicKey: key,
    naming: shown.naming,
    frets: fretsAround(places),
    label: 'Neck with the phrase on it',
  };
  const rows = verdict
    ? card.choices.filter(({ path }) => path === card.path || path === chosen)
    : card.choices;
  return (
    <CardFrame
      {...props}
      hear={verdict ? hearAnswer : hear}
      attributes={{
        'data-notes': verdict
          ? phrase.notes.map(({ midi, at }) => `${midi}@${beatsText(at)}`).join(' ')
          : undefined,
      }}
      question="Which path did it take?"
      hint={`${keyLabel(key, shown.naming)} · ${COUNTS[phrase.notes.length]} notes`}
      answers={
        <>
          <div class="paths" role="group" aria-label="Paths of degrees">
            {rows.map(({ path, heights }) => (
              <button
                type="button"
                key={path}
                class={`path ${verdict ? (path === card.path ? 'right' : 'wrong') : ''}`}
                data-answer={path}
                aria-disabled={chosen !== null}
                aria-pressed={chosen === path}
                onClick={() => choose(path)}
              >
                <span class="row">
                  {path.split(' ').map((degree, index) => (
                    <span key={index} class={path === card.path && lit === index ? 'sounding' : ''}>
                      {degree}
                    </span>
                  ))}
                </span>
                <Hops heights={heights} />
                {verdict && <span class="unseen">{path === card.path ? 'right' : 'wrong'}</span>}
              </button>
            ))}
          </div>
          {explanation && (
            <button type="button" class="button quiet along" onClick={() => setAlong(true)}>
              Play along
            </button>
          )}
          {explanation && along && (
            <PlayAlong
              neck={{ ...drawn, dots: explanation.dots }}
              sounding={explanation.sound}
              notes={places.map((place, index) => ({
                ...place,
                label: String(degreeOfStep(card.line.steps[index]!)),
                at: toNumber(phrase.notes[index]!.at),
              }))}
              groups={groupStarts(card.line)}
              close={() => setAlong(false)}
            />
          )}
        </>
      }
    >
      {explanation ? (
        <Neck
          {...drawn}
          dots={explanation.dots}
          lit={lit === null ? null : (places[lit] ?? null)}
          tap={(place) => pluck(midiAt(instrument, place), place.string)}
        />
      ) : (
        <div class="hearing">
          <button
            type="button"
            class="hear"
            data-do="hear"
            aria-label="Hear the phrase"
            onClick={() => hear()}
          >
            <svg viewBox="0 0 24 24" width="40" height="40" aria-hidden="true">
              <path d="M8 5v14l11-7z" fill="currentColor" />
            </svg>
          </button>
          <div class="buttons">
            <button type="button" class="button" onClick={() => hear(SLOWER)}>
              Slower
            </button>
            <button type="button" class="button" onClick={() => hearKey()}>
              Key again
            </button>
          </div>
        </div>
      )}
    </CardFrame>
  );
}
