import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { KINDS } from '../../cards/here.ts';
import { closeMicrophone, microphoneState } from '../../listening/index.ts';
import { GUITAR } from '../../neck/instrument.ts';
import { guitar } from '../guitar/guitar.ts';
import GuitarGate from '../guitar/GuitarGate.tsx';
import GuitarGone from '../guitar/GuitarGone.tsx';
import { isWithGuitar, leave, wasReady } from '../guitar/inHand.ts';
import { useByItself, useSpokenQuestion } from '../guitar/inRound.ts';
import { ListeningMark } from '../guitar/ListeningMark.tsx';
import { lessonById } from '../state.ts';
import type { Hand } from './hand.ts';
import { draw, goOn as goOnFromCard, lessonOfRound, shown, withoutGuitar } from './session.ts';

/** A round with the guitar: it is lent to the cards, and the microphone let go of when the round is over or left. */
export default function WithGuitar({ children }: { children(hand: Hand): VNode }): VNode {
  return children(useGuitar());
}

function useGuitar(): Hand {
  const [isDrawing, setDrawing] = useState(false);
  const current = shown.value;
  const lesson = lessonById(lessonOfRound.value ?? '');
  const isHeard = guitar.value !== null;
  const isLost = lesson !== null && isWithGuitar(lesson.id) && !isHeard;
  const goOn = () => {
    setDrawing(current === null);
    void draw().then(() => setDrawing(false));
  };
  useLettingGo(isHeard, isHeard && current === null && !isDrawing);
  const card = current?.card;
  const isSaid = useSpokenQuestion(
    // The same card may be drawn again: it is said once.
    card ? `${card.item.id} ${card.seed}` : null,
    card !== undefined && sounds(card.item),
  );
  // At the round's end it is off because nothing is left to be heard.
  const isAsked =
    isLost && (!wasReady.value || (current === null && microphoneState.value !== 'off'));
  const instrument = lesson?.deck.instrument ?? GUITAR;
  return {
    gate: isAsked && <GuitarGate instrument={instrument} goOn={goOn} />,
    notice: isLost && wasReady.value && <GuitarGone goOn={goOn} />,
    mark: <ListeningMark />,
    isDrawing,
    // What could not be heard twice is tapped.
    lent: isSaid || (current?.unheard ?? 0) > 1 ? null : guitar.value,
    goesOn: useByItself(charactersToRead(), () => void goOnFromCard()),
  };
}

/** Without the guitar its cards go; without a round the microphone does. */
function useLettingGo(isHeard: boolean, isOver: boolean): void {
  useEffect(() => leave, []);
  useEffect(() => {
    if (!isHeard) void withoutGuitar();
  }, [isHeard]);
  useEffect(() => {
    if (isOver) closeMicrophone();
  }, [isOver]);
}

const sounds = ({ kind }: { readonly kind: keyof typeof KINDS }): boolean =>
  KINDS[kind].needs.includes('sound');

/** How much there is to read of the verdict; null while there is none. */
function charactersToRead(): number | null {
  const explanation = shown.value?.explanation;
  return explanation
    ? explanation.title.length + explanation.sentence.length + explanation.detail.length
    : null;
}
