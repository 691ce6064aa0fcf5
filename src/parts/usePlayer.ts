import { useEffect, useRef, useState } from 'preact/hooks';
import { play, type Playing, type Sounding } from '../sound/index.ts';
import { beatsOf, type Stretch } from './stretch.ts';

/** How a phrase is played. */
export interface Manner {
  /** Beats a minute. */
  readonly tempo: number;
  readonly loop: boolean;
  /** Arpeggio by arpeggio. */
  readonly apart: boolean;
  readonly countIn: boolean;
  readonly click: boolean;
  /** Only the click is heard. */
  readonly muted: boolean;
  /** Clicks a beat. */
  readonly subdivision: number;
  /** The first and the last note of what alone is played; null for all of it. */
  readonly stretch: Stretch | null;
}

export interface Played {
  readonly sounding: Sounding;
  /** The index of each arpeggio's first note. */
  readonly groups: readonly number[];
  /** Told of the note that is heard, and of silence. */
  onNote?(index: number | null): void;
}

/** A phrase that can be played, and what is heard of it. */
export interface Playback {
  readonly manner: Manner;
  readonly playing: boolean;
  /** The note that is heard now. */
  readonly lit: number | null;
  start(): void;
  stop(): void;
  /** Tempo and clicks change while it sounds; for anything else it stops. */
  change(part: Partial<Manner>): void;
}

const USUAL = {
  loop: false,
  apart: false,
  countIn: true,
  click: true,
  muted: false,
  subdivision: 1,
  stretch: null,
};

/** Plays a phrase as it is wished; it falls silent when the screen goes. */
export function usePlayer({ sounding, groups, onNote }: Played): Playback {
  const [manner, setManner] = useState<Manner>({ ...USUAL, tempo: sounding.tempo });
  const [lit, setLit] = useState<number | null>(null);
  const [playing, setPlaying] = useState(false);
  const player = useRef<Playing | null>(null);
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
    const begun = play(sounding, { ...optionsOf(manner, { sounding, groups }), onNote: heard });
    player.current = begun;
    // Over by itself, its last note ringing on, or because there is no sound.
    void begun.done.then(() => {
      if (player.current !== begun) return;
      setPlaying(false);
      heard(null);
    });
  };
  const change = (part: Partial<Manner>) => {
    const { tempo, click, muted, ...others } = part;
    if (Object.keys(others).length > 0) stop();
    if (tempo !== undefined) player.current?.speed(tempo / sounding.tempo);
    if (click !== undefined) player.current?.click(click);
    if (muted !== undefined) player.current?.mute(muted);
    setManner((now) => ({ ...now, ...part }));
  };
  useEffect(() => stop, []);
  return { manner, playing, lit, start, stop, change };
}

function optionsOf(manner: Manner, { sounding, groups }: Played) {
  const { tempo, loop, apart, countIn, click, muted, subdivision, stretch } = manner;
  return {
    speed: tempo / sounding.tempo,
    ...(stretch && { stretch: beatsOf(stretch, sounding) }),
    ...(apart && { groups }),
    loop,
    countIn: countIn ? 4 : 0,
    subdivision,
    click,
    muted,
  };
}
