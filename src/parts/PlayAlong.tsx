import type { ComponentProps } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { midiAt, type Place } from '../neck/place.ts';
import { pluck } from '../sound/index.ts';
import { Neck } from './Neck.tsx';
import { PhrasePlayer } from './PhrasePlayer.tsx';
import type { StripNote } from './PhraseStrip.tsx';
import './PlayAlong.css';

interface PlayAlongProps extends Pick<ComponentProps<typeof PhrasePlayer>, 'sounding' | 'groups'> {
  /** The neck and the notes on it; which of them is heard is lit here. */
  neck: Omit<ComponentProps<typeof Neck>, 'lit' | 'tap'>;
  /** One for each note of the sounding. */
  notes: readonly StripNote[];
  close(): void;
}

/** A phrase to be played along with, over the screen it belongs to: slow, looped, in pieces, with a click. */
export function PlayAlong({ neck, sounding, notes, groups, close }: PlayAlongProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [lit, setLit] = useState<Place | null>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog class="play-along" ref={dialog} aria-label="Play along" onClose={close}>
      <header>
        <h2>Play along</h2>
        <button type="button" class="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      <div class="play-neck">
        <Neck
          {...neck}
          lit={lit}
          tap={(place) => pluck(midiAt(neck.instrument, place), place.string)}
        />
      </div>
      <PhrasePlayer
        {...{ sounding, notes, groups }}
        strings={neck.instrument.tuning.length}
        onNote={(index) => setLit(index === null ? null : notes[index]!)}
      />
    </dialog>
  );
}
