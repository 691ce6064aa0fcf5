import type { ComponentProps } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { fretsAround, type Place } from '../../neck/place.ts';
import { Hops } from '../../parts/Hops.tsx';
import { PlayAlong } from '../../parts/PlayAlong.tsx';
import { keyLabel } from '../../theory/naming.ts';
import { toNumber } from '../../theory/rhythm.ts';
import { beatsText } from '../../theory/rhythmText.ts';
import { degreeOfStep } from '../../theory/scale.ts';
import { PhraseNeck } from '../excerpt/PhraseNeck.tsx';
import { CardFrame } from '../frame/CardFrame.tsx';
import { HearingButtons, useHearing } from '../frame/Hearing.tsx';
import type { Explanation, FaceProps } from '../kind.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import { numberWord } from '../../parts/english.ts';
import { Paths } from '../frame/Paths.tsx';
import type { TraceCard } from './ask.ts';
import { handPlaces } from './explain.ts';
import { groupStarts } from './stepLine.ts';
import './Face.css';

/** The key is sounded, then the phrase; four paths to choose from. Nothing is drawn of it before the answer. */
export function Face(props: FaceProps<TraceCard>) {
  const { card, verdict, explanation, shown } = props;
  const { key, phrase, instrument } = card;
  const places = useMemo(() => handPlaces(card), [card]);
  const asked = phraseSound(phrase, places);
  const hearing = useHearing({ ...props, asked, keyFirst: true });
  const { lit } = hearing;
  const drawn = {
    instrument,
    musicKey: key,
    naming: shown.naming,
    frets: fretsAround(places),
    label: 'Neck with the phrase on it',
  };
  return (
    <CardFrame
      {...props}
      hear={hearing.hearAnswer}
      attributes={{
        'data-notes': verdict
          ? phrase.notes.map(({ midi, at }) => `${midi}@${beatsText(at)}`).join(' ')
          : undefined,
      }}
      question="Which path did it take?"
      hint={`${keyLabel(key, shown.naming)} · ${numberWord(phrase.notes.length)} notes`}
      answers={
        <>
          <PathChoices {...props} lit={lit} />
          {explanation && <Along {...{ card, explanation, places, drawn }} />}
        </>
      }
    >
      {explanation ? (
        <PhraseNeck {...props} places={places} lit={lit} />
      ) : (
        <HearingButtons hearing={hearing} what="the phrase" />
      )}
    </CardFrame>
  );
}

interface PathChoicesProps extends FaceProps<TraceCard> {
  /** The note that is heard now. */
  lit: number | null;
}

/** The paths to choose from, each in degrees and as it rises and falls. */
function PathChoices({ card, verdict, answer, lit }: PathChoicesProps) {
  const [chosen, setChosen] = useState<string | null>(null);
  const choose = (path: string) => {
    if (chosen !== null) return;
    setChosen(path);
    answer(path, 1);
  };
  const paths = card.choices.map(({ path, heights }) => ({
    answer: path,
    content: (
      <>
        <span class="row">
          {path.split(' ').map((degree, index) => (
            <span key={index} class={path === card.path && lit === index ? 'sounding' : ''}>
              {degree}
            </span>
          ))}
        </span>
        <Hops heights={heights} />
      </>
    ),
  }));
  return (
    <Paths
      label="Paths of degrees"
      paths={paths}
      right={card.path}
      judged={verdict !== null}
      {...{ chosen, choose }}
    />
  );
}

interface AlongProps {
  card: TraceCard;
  explanation: Explanation;
  places: readonly Place[];
  drawn: Omit<ComponentProps<typeof PlayAlong>['neck'], 'dots'>;
}

/** The phrase to be played along with. */
function Along({ card, explanation, places, drawn }: AlongProps) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" class="button quiet along" onClick={() => setOpen(true)}>
        Play along
      </button>
      {open && (
        <PlayAlong
          neck={{ ...drawn, dots: explanation.dots }}
          sounding={explanation.sound}
          notes={places.map((place, index) => ({
            ...place,
            label: String(degreeOfStep(card.line.steps[index]!)),
            at: toNumber(card.phrase.notes[index]!.at),
          }))}
          groups={groupStarts(card.line)}
          close={() => setOpen(false)}
        />
      )}
    </>
  );
}
