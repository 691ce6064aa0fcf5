import { useEffect, useRef, useState } from 'preact/hooks';
import { play, type Playing, type Sounding } from '../sound/index.ts';
import { FASTEST, SLOWEST, tappedTempo } from '../sound/tempo.ts';
import { Choice, Choices } from './Choices.tsx';
import { PhraseStrip, type StripNote } from './PhraseStrip.tsx';
import './PhrasePlayer.css';

interface PhrasePlayerProps {
  sounding: Sounding;
  notes: readonly StripNote[];
  strings: number;
  /** The index of each arpeggio's first note. */
  groups: readonly number[];
  /** Told of the note that is heard, and of silence. */
  onNote?(index: number | null): void;
}

const SUBDIVISIONS = [
  [1, 'quarters'],
  [2, 'eighths'],
  [3, 'triplets'],
  [4, 'sixteenths'],
] as const;

/** Plays a phrase slow, looped, or arpeggio by arpeggio, with a counted click. */
export function PhrasePlayer({ sounding, notes, strings, groups, onNote }: PhrasePlayerProps) {
  const [tempo, setTempo] = useState(sounding.tempo);
  const [loop, setLoop] = useState(false);
  const [apart, setApart] = useState(false);
  const [countIn, setCountIn] = useState(true);
  const [click, setClick] = useState(true);
  const [muted, setMuted] = useState(false);
  const [subdivision, setSubdivision] = useState(1);
  const [stretch, setStretch] = useState<readonly [number, number] | null>(null);
  const [lit, setLit] = useState<number | null>(null);
  const [playing, setPlaying] = useState(false);
  const player = useRef<Playing | null>(null);
  const taps = useRef<number[]>([]);

  const heard = (index: number | null) => {
    setLit(index);
    onNote?.(index);
  };
  const stop = () => {
    player.current?.stop();
    player.current = null;
    setPlaying(false);
    heard(null);
  };
  const start = () => {
    setPlaying(true);
    const begun = play(sounding, {
      speed: tempo / sounding.tempo,
      ...(stretch && { stretch: beatsOf(stretch, sounding) }),
      ...(apart && { groups }),
      loop,
      countIn: countIn ? 4 : 0,
      subdivision,
      click,
      muted,
      onNote: heard,
    });
    player.current = begun;
    // Over by itself, its last note ringing on, or because there is no sound.
    void begun.done.then(() => {
      if (player.current !== begun) return;
      setPlaying(false);
      heard(null);
    });
  };
  useEffect(() => stop, []);

  const changeTempo = (wanted: number) => {
    const next = Math.min(FASTEST, Math.max(SLOWEST, wanted));
    setTempo(next);
    player.current?.speed(next / sounding.tempo);
  };
  const tapTempo = () => {
    taps.current = [...taps.current, performance.now()].slice(-9);
    const tapped = tappedTempo(taps.current);
    if (tapped !== null) changeTempo(tapped);
  };
  /** Two taps choose a stretch, whichever end comes first; a third lets it go. */
  const choose = (index: number) => {
    stop();
    if (stretch === null) setStretch([index, index]);
    else if (stretch[0] === stretch[1] && index !== stretch[0])
      setStretch([Math.min(stretch[0], index), Math.max(stretch[0], index)]);
    else setStretch(null);
  };
  return (
    <div class="player">
      <PhraseStrip {...{ notes, strings, lit, stretch, choose }} />
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
      <div class="tempo" role="group" aria-label="Tempo">
        <button
          type="button"
          class="button"
          aria-label="Slower"
          onClick={() => changeTempo(tempo - 6)}
        >
          −
        </button>
        <output aria-label="Tempo">
          <span class="music">♩</span> = {tempo}
        </output>
        <button
          type="button"
          class="button"
          aria-label="Faster"
          onClick={() => changeTempo(tempo + 6)}
        >
          +
        </button>
        <button type="button" class="button" onClick={tapTempo}>
          Tap the beat
        </button>
      </div>
      <Choices legend="How">
        <Choice label="loop" checked={loop} change={(on) => (stop(), setLoop(on))} />
        {groups.length > 1 && (
          <Choice
            label="arpeggio by arpeggio"
            checked={apart}
            change={(on) => (stop(), setApart(on))}
          />
        )}
        <Choice label="count in" checked={countIn} change={(on) => (stop(), setCountIn(on))} />
        <Choice
          label="click"
          checked={click}
          change={(on) => (setClick(on), player.current?.click(on))}
        />
        <Choice
          label="only the click"
          checked={muted}
          change={(on) => (setMuted(on), player.current?.mute(on))}
        />
      </Choices>
      <Choices legend="Clicks">
        {SUBDIVISIONS.map(([count, name]) => (
          <Choice
            key={count}
            label={name}
            name="subdivision"
            checked={subdivision === count}
            change={() => (stop(), setSubdivision(count))}
          />
        ))}
      </Choices>
    </div>
  );
}

/** The beats from the first note of a stretch to the end of its last. */
function beatsOf([first, last]: readonly [number, number], { notes }: Sounding) {
  return { from: notes[first]!.at, to: notes[last]!.at + notes[last]!.length };
}
