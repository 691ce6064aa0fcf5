import { useMemo } from 'preact/hooks';
import { numberWord } from '../../parts/english.ts';
import { keyLabel } from '../../theory/naming.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import { HearingButtons, useHearing } from '../frame/Hearing.tsx';
import type { FaceProps } from '../kind.ts';
import { PhraseNeck } from '../excerpt/PhraseNeck.tsx';
import { lineSound } from '../playing/explain.ts';
import { Heard } from '../playing/Heard.tsx';
import { PlayingFoot } from '../playing/PlayingFoot.tsx';
import { usePlaying } from '../playing/usePlaying.ts';
import { useQuiet } from '../playing/useQuiet.ts';
import type { EchoCard } from './ask.ts';
import { handPlaces } from './explain.ts';

/** The key is sounded, then a short line; when it has died away, what is played is followed. */
export function Face(props: FaceProps<EchoCard>) {
  const { card, verdict, explanation, shown } = props;
  const { key, notes, tempo } = card;
  const places = useMemo(() => handPlaces(card), [card]);
  const { quiet, sounded } = useQuiet(false, props.sounded);
  const hearing = useHearing({ ...props, sounded, asked: lineSound(card, places), keyFirst: true });
  const follow = usePlaying({ ...props, quiet, countIn: false });
  return (
    <CardFrame
      {...props}
      hear={hearing.hearAnswer}
      attributes={{ 'data-tempo': String(tempo) }}
      question="Play it back"
      hint={`${keyLabel(key, shown.naming)} · ${numberWord(notes.length)} notes · anywhere on the neck, in its octave`}
      answers={
        <Heard
          {...{ card, shown }}
          performance={follow.performance}
          lit={follow.lit}
          told={verdict !== null}
        />
      }
      foot={<PlayingFoot {...props} follow={follow} again="Begin again" />}
    >
      {explanation ? (
        <PhraseNeck {...props} places={places} lit={hearing.lit} />
      ) : (
        <HearingButtons hearing={hearing} what="the line" />
      )}
    </CardFrame>
  );
}
