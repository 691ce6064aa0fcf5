import { useEffect, useState } from 'preact/hooks';
import { KINDS } from '../../cards/here.ts';
import type { Guitar } from '../../cards/kind.ts';
import { closeMicrophone, microphoneState } from '../../listening/index.ts';
import { GUITAR, type Instrument } from '../../neck/instrument.ts';
import { guitar, isWithGuitar, leave, wasReady } from '../guitar/inHand.ts';
import { useByItself, useSpokenQuestion } from '../guitar/inRound.ts';
import { lessonById } from '../state.ts';
import { draw, goOn as goOnFromCard, lessonOfRound, shown, withoutGuitar } from './session.ts';

/** The guitar in a round. */
interface InRound {
  readonly instrument: Instrument;
  /** Whether it has to be made ready before there is a card. */
  readonly isAsked: boolean;
  /** Whether it was ready, and the phone hears it no more. */
  readonly isGone: boolean;
  /** Whether a card is being drawn after that. */
  readonly isDrawing: boolean;
  /** What the card is lent. */
  readonly lent: Guitar | null;
  /** Whether the next card comes by itself. */
  readonly goesOn: boolean;
  /** Draws the next card. */
  goOn(): void;
}

/** Lends the guitar to the cards of a round, and lets go of the microphone when the round is over or left. */
export function useGuitar(): InRound {
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
  return {
    instrument: lesson?.deck.instrument ?? GUITAR,
    // At the round's end it is off because nothing is left to be heard.
    isAsked: isLost && (!wasReady.value || (current === null && microphoneState.value !== 'off')),
    isGone: isLost && wasReady.value,
    isDrawing,
    // What could not be heard twice is tapped.
    lent: isSaid || (current?.unheard ?? 0) > 1 ? null : guitar.value,
    goesOn: useByItself(charactersToRead(), () => void goOnFromCard()),
    goOn,
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
