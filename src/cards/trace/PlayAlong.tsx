import { useEffect, useRef, useState } from 'preact/hooks';
import { Neck } from '../../parts/Neck.tsx';
import { PhrasePlayer } from '../../parts/PhrasePlayer.tsx';
import { toNumber } from '../../theory/rhythm.ts';
import type { Explanation, Shown } from '../kind.ts';
import type { TraceCard } from './ask.ts';
import { fretsOf, placesOf } from './explain.ts';
import { degreeOfStep } from './line.ts';

interface PlayAlongProps {
  card: TraceCard;
  explanation: Explanation;
  shown: Shown;
  close(): void;
}

/** The phrase to be played along with: slow, looped, in pieces, with a click. */
export function PlayAlong({ card, explanation, shown, close }: PlayAlongProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [lit, setLit] = useState<number | null>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const places = placesOf(card);
  const { line, phrase, instrument } = card;
  return (
    <dialog class="play-along" ref={dialog} aria-label="Play along" onClose={close}>
      <header>
        <h2>Play along</h2>
        <button type="button" class="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      <Neck
        instrument={instrument}
        musicKey={card.key}
        naming={shown.naming}
        frets={fretsOf(places)}
        label="Neck with the phrase on it"
        dots={explanation.dots}
        lit={lit === null ? null : (places[lit] ?? null)}
      />
      <PhrasePlayer
        sounding={explanation.sound}
        strings={instrument.tuning.length}
        notes={places.map((place, index) => ({
          ...place,
          label: String(degreeOfStep(line.steps[index]!)),
          at: toNumber(phrase.notes[index]!.at),
        }))}
        groups={line.degrees.map((_, group) => 3 * group)}
        onNote={setLit}
      />
    </dialog>
  );
}
