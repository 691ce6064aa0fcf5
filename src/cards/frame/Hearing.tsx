import { useEffect, useState } from 'preact/hooks';
import { keySounding, type PlayOptions, type Sounding } from '../../sound/index.ts';
import { usePlay } from '../../sound/usePlay.ts';
import type { FaceProps } from '../kind.ts';
import './Hearing.css';

/** The slower hearing's part of the tempo. */
const SLOWER = 0.6;

interface HearingOptions extends Pick<
  FaceProps,
  'card' | 'verdict' | 'explanation' | 'shown' | 'presented' | 'sounded'
> {
  /** What is asked about. */
  asked: Sounding;
  /** Whether the key is sounded before it. */
  keyFirst: boolean;
  /** How it is played. */
  how?: PlayOptions;
}

/** What an ear card lets hear. */
interface Hearing {
  /** The note of the right answer that sounds, by its index: only once there is a verdict. */
  readonly lit: number | null;
  hear(speed?: number): void;
  hearKey(): void;
  /** The right answer, and after it what was answered instead. */
  hearAnswer(): void;
}

/** Sounds the key and what is asked about, once; then, when the verdict comes, the right answer and the other one. */
export function useHearing(options: HearingOptions): Hearing {
  const { card, verdict, explanation, shown, asked, keyFirst, how = {} } = options;
  const [lit, setLit] = useState<number | null>(null);
  const play = usePlay();
  const begin = (sounding: Sounding, playing: PlayOptions) => {
    options.sounded(play(sounding, playing));
  };
  const hear = (speed = 1) => begin(asked, { ...how, speed });
  const hearKey = (onEnd?: () => void) =>
    begin(keySounding(card.key, shown.keySound), onEnd ? { onEnd } : {});
  const hearAnswer = () => {
    if (!explanation) return;
    const { sound, otherSound } = explanation;
    const answer = play(sound, { onNote: setLit, onEnd: () => otherSound && play(otherSound) });
    void answer.done.then(() => setLit(null));
  };
  useEffect(() => {
    if (verdict && options.presented === 'new' && keyFirst) hearKey(hearAnswer);
    else if (verdict) hearAnswer();
    else if (keyFirst) hearKey(() => hear());
    else hear();
  }, [verdict]);
  return { lit, hear, hearKey: () => hearKey(), hearAnswer };
}

interface HearingButtonsProps {
  hearing: Hearing;
  /** What the large button lets hear: `the phrase`. */
  what: string;
  keyAgain: boolean;
}

/** What stands in the middle of an ear card until it is answered: nothing to be seen, only heard. */
export function HearingButtons({ hearing, what, keyAgain }: HearingButtonsProps) {
  return (
    <div class="hearing">
      <button
        type="button"
        class="hear"
        data-do="hear"
        aria-label={`Hear ${what}`}
        onClick={() => hearing.hear()}
      >
        <svg viewBox="0 0 24 24" width="40" height="40" aria-hidden="true">
          <path d="M8 5v14l11-7z" fill="currentColor" />
        </svg>
      </button>
      <div class="buttons">
        <button type="button" class="button" onClick={() => hearing.hear(SLOWER)}>
          Slower
        </button>
        {keyAgain && (
          <button type="button" class="button" onClick={hearing.hearKey}>
            Key again
          </button>
        )}
      </div>
    </div>
  );
}
