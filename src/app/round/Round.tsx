import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { KINDS } from '../../cards/here.ts';
import { soundSentence, soundState } from '../../sound/index.ts';
import { DEGREES } from '../../theory/scale.ts';
import { itemPlace } from '../deckWords.ts';
import { guitar } from '../guitar/guitar.ts';
import { lazy } from '../lazy.tsx';
import { cardShown } from '../later.ts';
import { go, leaving } from '../router.ts';
import { heardAgain, isSilent } from '../settings.ts';
import { changeSettings, haveLog, opened, settings } from '../state.ts';
import { trouble } from '../trouble.ts';
import { Caught } from './Caught.tsx';
import { Elsewhere } from './Elsewhere.tsx';
import { EMPTY, type Hand } from './hand.ts';
import { useLead } from './lead.ts';
import { withFirstWords } from './firstWords.ts';
import { failed } from './askable.ts';
import {
  addSounded,
  answer,
  draw,
  goOn,
  lessonOfRound,
  progress,
  restore,
  round,
  shown,
  skip,
  unheard,
} from './session.ts';
import { SoundNotice } from './SoundNotice.tsx';
import { timeLeft } from './timeLeft.ts';
import { unheardSentence } from './unheard.ts';
import { useRoundKeys } from './useKeys.ts';
import './Round.css';

const WithGuitar = lazy(() => import('./WithGuitar.tsx'));
const RoundEnd = lazy(() => import('./RoundEnd.tsx'));

/** A round: one card at a time, how far it is, and at the end what grew. */
export default function RoundScreen() {
  if (!settings.value.guitar.inHand) return <Cards hand={EMPTY} />;
  return <WithGuitar>{(hand) => <Cards hand={hand} />}</WithGuitar>;
}

function Cards({ hand }: { hand: Hand }) {
  const { leading, takeOver } = useLead();
  const drawn = useDrawn(leading === 'here');
  const current = shown.value;
  useFocusOnCard(drawn);
  useRoundKeys();
  useEffect(() => {
    // Before all that comes later: what keeps the answer to it.
    if (current && !current.presented) void haveLog().then(cardShown, cardShown);
  }, [current]);

  if (leading === 'elsewhere') return <Elsewhere takeOver={takeOver} />;
  if (lessonOfRound.value === null || !drawn || hand.isDrawing)
    return <main class="screen" aria-busy="true" />;
  if (hand.gate) return hand.gate;
  if (!current) return <RoundEnd />;
  const { Face } = KINDS[current.card.item.kind];
  const { reasons } = settings.value;
  const explanation =
    current.explanation && !reasons
      ? { ...current.explanation, sentence: '', detail: '' }
      : current.explanation;
  return (
    <main class={`screen round ${guitar.value ? 'in-hand' : ''}`}>
      <RoundBar {...hand} />
      {trouble.value && (
        <p class="notice bad" role="alert">
          {trouble.value}
        </p>
      )}
      <SoundNotice />
      <FailedNotice />
      {hand.notice}
      <UnheardNotice />
      <Caught
        key={`${current.card.item.id} ${current.card.seed} ${current.unheard}`}
        threw={(error) => void skip(current.card, error)}
      >
        <Face
          card={current.card}
          verdict={current.verdict}
          explanation={explanation && withFirstWords(current.card, explanation)}
          shown={settings.value}
          presented={current.presented}
          answer={(given, taps) => void answer(given, taps)}
          show={() => void answer(null, 1)}
          guitar={hand.lent}
          unheard={() => void unheard()}
          sounded={addSounded}
          next={() => void goOn()}
        />
      </Caught>
    </main>
  );
}

/** Draws the card whenever the round is come back to, and says whether it has: time spent elsewhere is not time spent on it. */
function useDrawn(isHere: boolean): boolean {
  const [drawn, setDrawn] = useState(false);
  useLayoutEffect(() => {
    setDrawn(false);
    if (!opened.value || !isHere) return;
    const leave = leaving();
    void restore().then(async () => {
      if (!round.value) return leave('today');
      await draw();
      setDrawn(true);
    });
  }, [opened.value, isHere]);
  return drawn;
}

/** That what was played could not be told. */
function UnheardNotice() {
  return unheardSentence.value ? (
    <p class="notice" role="status" data-verdict="unheard">
      {unheardSentence.value}
    </p>
  ) : null;
}

/** Goes with the card: to its question, then to what goes on. */
function useFocusOnCard(drawn: boolean): void {
  const current = shown.value;
  useEffect(() => {
    // Whoever practises without looking is told of each new card, and goes on from its question.
    document.querySelector<HTMLElement>('.card h1')?.focus();
  }, [current?.card, drawn]);
  useEffect(() => {
    if (!current?.verdict) return;
    document.querySelector<HTMLElement>('[data-do="next"]')?.focus({ preventScroll: true });
    // In large letters what was answered may lie far below it.
    document.querySelector('.why')?.scrollIntoView({ block: 'nearest' });
  }, [current?.verdict, drawn]);
}

/** Which item could not be asked last, where one could not. */
function FailedNotice() {
  const item = failed.value.at(-1);
  return item ? (
    <p class="notice" role="status">
      One card could not be asked: {itemPlace(item)}. It was left out and counts for nothing; tell
      your teacher.
    </p>
  ) : null;
}

function RoundBar({ goesOn, mark }: Pick<Hand, 'goesOn' | 'mark'>) {
  const isMuted = isSilent(settings.value);
  return (
    <header class="round-bar">
      {round.value!.goal !== 'enough' && <SmallStair filled={progress.value} />}
      <span class="soft grow">{goesOn ? <GoesOn /> : <MinutesLeft />}</span>
      {!goesOn && mark}
      <button
        type="button"
        class="bar-button"
        aria-pressed={isMuted}
        aria-label="Mute"
        onClick={() => changeSettings(isMuted ? heardAgain(settings.value) : { muted: true })}
      >
        <Speaker muted={isMuted} />
      </button>
      <button
        type="button"
        class="bar-button word"
        aria-label="Leave the round"
        onClick={() => go('today')}
      >
        Leave
      </button>
    </header>
  );
}

/** In place of the minutes left, so that on the smallest phone the bar stays one line. */
function GoesOn() {
  return <span class="listening goes-on">Goes on: tap to stay</span>;
}

function MinutesLeft() {
  return <>{isAwaited() ? <OneMoment /> : timeLeft(round.value!)}</>;
}

/** Whether the card on the screen must be heard, and the sound is still on its way. */
function isAwaited(): boolean {
  const kind = shown.value?.card.item.kind;
  return soundState.value === 'loading' && !!kind && KINDS[kind].needs.includes('sound');
}

/** In place of the time left, so that it takes no room of its own. */
function OneMoment() {
  return (
    <span role="status">
      one moment<span class="unseen">: {soundSentence.value}</span>
    </span>
  );
}

/** How far the round is, 0 to 1: a stair that fills from its lowest step on. */
function SmallStair({ filled }: { filled: number }) {
  return (
    <span
      class="small-stair"
      role="progressbar"
      aria-label="How far the round is"
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(filled * 100)}
    >
      {DEGREES.map((degree) => {
        const part = Math.min(1, Math.max(0, filled * DEGREES.length - (degree - 1)));
        return <span key={degree} style={{ '--step': String(degree), '--filled': String(part) }} />;
      })}
    </span>
  );
}

function Speaker({ muted }: { muted: boolean }) {
  return (
    <svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true">
      <path d="M4 9v6h4l5 4V5L8 9z" fill="currentColor" />
      <path
        d={muted ? 'M16 9l5 6M21 9l-5 6' : 'M16 8.5a5 5 0 0 1 0 7M18.5 6a8.5 8.5 0 0 1 0 12'}
        fill="none"
        stroke="currentColor"
        stroke-width="1.8"
      />
    </svg>
  );
}
