import { useEffect, useRef, useState } from 'preact/hooks';
import type { Playing, PlayOptions, Sounding } from '../../sound/index.ts';
import { keySounding } from '../../sound/key.ts';
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

/** What sounds now, and how many of its notes were heard. */
interface Stage {
  readonly what: 'key' | 'asked' | 'answer' | 'other' | null;
  readonly heard: number;
}

const SILENT: Stage = { what: null, heard: 0 };

/** What an ear card lets hear. */
interface Hearing {
  readonly stage: Stage;
  /** The note of the right answer that sounds, by its index: only once there is a verdict. */
  readonly lit: number | null;
  /** How many notes what is asked about has, and whether the key can be heard before it. */
  readonly notes: number;
  readonly keyFirst: boolean;
  /** All of it from the beginning: the key, where it comes first, and what is asked about. */
  hear(): void;
  hearAlone(speed?: number): void;
  hearKey(): void;
  /** The right answer, and after it what was answered instead. */
  hearAnswer(): void;
  stop(): void;
}

/** Sounds the key and what is asked about, once; then, when the verdict comes, the right answer and the other one. */
export function useHearing(options: HearingOptions): Hearing {
  const { card, verdict, explanation, shown, asked, keyFirst, how = {} } = options;
  const { stage, begin, stop } = useStage();
  const playKey = (onEnd?: () => void) =>
    options.sounded(begin('key', keySounding(card.key, shown.keySound), onEnd ? { onEnd } : {}));
  const hearAlone = (speed = 1) => options.sounded(begin('asked', asked, { ...how, speed }));
  const hear = () => (keyFirst ? playKey(() => hearAlone()) : hearAlone());
  const hearAnswer = () => {
    if (!explanation) return;
    const { sound, otherSound } = explanation;
    begin('answer', sound, { onEnd: () => otherSound && begin('other', otherSound, {}) });
  };
  useEffect(() => {
    if (verdict && options.presented === 'new' && keyFirst) playKey(hearAnswer);
    else if (verdict) hearAnswer();
    else hear();
  }, [verdict]);
  return {
    stage,
    lit: stage.what === 'answer' && stage.heard > 0 ? stage.heard - 1 : null,
    notes: asked.notes.length,
    keyFirst,
    hear,
    hearAlone,
    hearKey: () => playKey(),
    hearAnswer,
    stop,
  };
}

/** Plays one thing after the other, and tells which of them sounds and how far it is. */
function useStage() {
  const play = usePlay();
  const [stage, setStage] = useState<Stage>(SILENT);
  const last = useRef<Playing | null>(null);
  const begin = (what: Stage['what'], sounding: Sounding, options: PlayOptions): Playing => {
    setStage({ what, heard: 0 });
    const onNote = (index: number) => setStage({ what, heard: index + 1 });
    const playing = play(sounding, { ...options, onNote });
    last.current = playing;
    void playing.done.then(() => {
      if (last.current === playing) setStage(SILENT);
    });
    return playing;
  };
  return { stage, begin, stop: () => last.current?.stop() };
}

interface HearingButtonsProps {
  hearing: Hearing;
  /** What the large button lets hear: `the phrase`. */
  what: string;
}

/** What stands in the middle of an ear card until it is answered: that it sounds, and nothing of what. */
export function HearingButtons({ hearing, what }: HearingButtonsProps) {
  const { stage, notes, keyFirst } = hearing;
  const sounds = stage.what !== null;
  const sounding = stage.what === 'key' ? 'the key' : what;
  return (
    <div class="hearing">
      <button
        type="button"
        class="hear"
        data-do={sounds ? 'stop' : 'hear'}
        aria-label={sounds ? 'Stop' : `Hear ${what}`}
        onClick={sounds ? hearing.stop : hearing.hear}
      >
        <svg viewBox="0 0 24 24" width="40" height="40" aria-hidden="true">
          <path d={sounds ? 'M7 7h10v10H7z' : 'M8 5v14l11-7z'} fill="currentColor" />
        </svg>
      </button>
      <p class="soft stage">{sounds ? capital(sounding) : ' '}</p>
      <Blanks count={notes} filled={stage.what === 'asked' ? stage.heard : 0} />
      <div class="buttons">
        <button type="button" class="button small" onClick={() => hearing.hearAlone(SLOWER)}>
          Slower
        </button>
        {keyFirst && (
          <>
            <button type="button" class="button small" onClick={() => hearing.hearAlone()}>
              {capital(what.replace(/^the /, ''))} alone
            </button>
            <button type="button" class="button small" onClick={hearing.hearKey}>
              Key alone
            </button>
          </>
        )}
      </div>
    </div>
  );
}

const capital = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** So many blanks stand in a row, on the smallest phone too. */
const BLANKS_IN_A_ROW = 16;

/** A blank for each note, filled as it is heard; of many notes rows as long as one another. */
function Blanks({ count, filled }: { count: number; filled: number }) {
  const inARow = Math.ceil(count / Math.ceil(count / BLANKS_IN_A_ROW));
  return (
    <div class="blanks" aria-hidden="true" style={{ '--in-a-row': String(inARow) }}>
      {Array.from({ length: count }, (_, index) => (
        <span key={index} class={index < filled ? 'filled' : ''} />
      ))}
    </div>
  );
}
