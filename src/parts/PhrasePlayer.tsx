import { useRef } from 'preact/hooks';
import { FASTEST, SLOWEST, tappedTempo } from '../sound/tempo.ts';
import { Choice, Choices } from './Choices.tsx';
import { PhraseStrip, type StripNote } from './PhraseStrip.tsx';
import { stretched } from './stretch.ts';
import { usePlayer, type Played, type Playback } from './usePlayer.ts';
import './PhrasePlayer.css';

interface PhrasePlayerProps extends Played {
  notes: readonly StripNote[];
  strings: number;
}

/** Plays a phrase slow, looped, or arpeggio by arpeggio, with a counted click. */
export function PhrasePlayer({ notes, strings, ...played }: PhrasePlayerProps) {
  const player = usePlayer(played);
  const { manner, playing, lit, start, stop, change } = player;
  const { stretch } = manner;
  return (
    <div class="player">
      <PhraseStrip
        {...{ notes, strings, lit, stretch }}
        choose={(index) => change({ stretch: stretched(stretch, index) })}
      />
      <button
        type="button"
        class="button main wide"
        data-do="hear"
        onClick={playing ? stop : start}
      >
        {playing ? 'Stop' : 'Play'}
      </button>
      <p class="soft" role="status">
        {stretch === null
          ? 'Tap two notes to play only what lies between them.'
          : `Notes ${stretch[0] + 1} to ${stretch[1] + 1}`}
      </p>
      <TempoButtons {...player} />
      <MannerChoices {...player} canBeApart={played.groups.length > 1} />
    </div>
  );
}

/** Slower, faster, or as it is tapped. */
function TempoButtons({ manner: { tempo }, change }: Pick<Playback, 'manner' | 'change'>) {
  const taps = useRef<number[]>([]);
  const set = (wanted: number) => change({ tempo: Math.min(FASTEST, Math.max(SLOWEST, wanted)) });
  const tap = () => {
    taps.current = [...taps.current, performance.now()].slice(-9);
    const tapped = tappedTempo(taps.current);
    if (tapped !== null) set(tapped);
  };
  return (
    <div class="tempo" role="group" aria-label="Tempo">
      <button type="button" class="button" aria-label="Slower" onClick={() => set(tempo - 6)}>
        −
      </button>
      <output aria-label="Tempo">
        <span class="music">♩</span> = {tempo}
      </output>
      <button type="button" class="button" aria-label="Faster" onClick={() => set(tempo + 6)}>
        +
      </button>
      <button type="button" class="button" onClick={tap}>
        Tap the beat
      </button>
    </div>
  );
}

const SWITCHES = [
  ['loop', 'loop'],
  ['apart', 'arpeggio by arpeggio'],
  ['countIn', 'count in'],
  ['click', 'click'],
  ['muted', 'only the click'],
] as const;

const SUBDIVISIONS = [
  [1, 'quarters'],
  [2, 'eighths'],
  [3, 'triplets'],
  [4, 'sixteenths'],
] as const;

interface MannerProps extends Pick<Playback, 'manner' | 'change'> {
  /** Whether there is more than one arpeggio. */
  canBeApart: boolean;
}

/** How it is played, and what clicks. */
function MannerChoices({ manner, change, canBeApart }: MannerProps) {
  return (
    <>
      <Choices legend="How">
        {SWITCHES.filter(([name]) => canBeApart || name !== 'apart').map(([name, label]) => (
          <Choice
            key={name}
            label={label}
            checked={manner[name]}
            change={(on) => change({ [name]: on })}
          />
        ))}
      </Choices>
      <Choices legend="Clicks">
        {SUBDIVISIONS.map(([count, name]) => (
          <Choice
            key={count}
            label={name}
            name="subdivision"
            checked={manner.subdivision === count}
            change={() => change({ subdivision: count })}
          />
        ))}
      </Choices>
    </>
  );
}
