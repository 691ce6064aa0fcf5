import { useEffect } from 'preact/hooks';
import { usePlay } from '../../sound/usePlay.ts';
import { chordLabel, numeralLabel } from '../../theory/naming.ts';
import { framed, FRETS_SHOWN } from '../arpeggio/arpeggio.ts';
import type { FaceProps } from '../kind.ts';
import { PlacingFace } from '../arpeggio/PlacingFace.tsx';
import { arpeggioSound } from '../frame/sounds.ts';
import { useQuiet } from '../playing/useQuiet.ts';
import type { FollowCard } from './ask.ts';

/** One arpeggio of the phrase stands on the neck and is heard; the next one is tapped. */
export function Face(props: FaceProps<FollowCard>) {
  const { card, verdict, shown } = props;
  const { before, chord } = card;
  const play = usePlay();
  const { quiet, sounded } = useQuiet(false, props.sounded);
  const hear = () => sounded(play(arpeggioSound(before.line)));
  useEffect(() => {
    if (!verdict) hear();
  }, []);
  const name = (of: typeof chord) => `${chordLabel(of, shown.naming)}, ${numeralLabel(of)}`;
  return (
    <PlacingFace
      {...props}
      quiet={quiet}
      question={`After ${name(before.chord)}: place ${name(chord)}`}
      drawn={drawnFrets(card)}
      before={before.dots}
      beside={
        <button type="button" class="button" data-do="hear" onClick={hear}>
          Hear {numeralLabel(before.chord)}
        </button>
      }
    />
  );
}

/** Both arpeggios where a small phone shows so many frets, else those that are asked about. */
function drawnFrets({ before, frets, instrument }: FollowCard): [number, number] {
  const all = [...before.dots.map(({ fret }) => fret), ...frets];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return high - low < FRETS_SHOWN ? framed([low, high], instrument) : framed(frets, instrument);
}
