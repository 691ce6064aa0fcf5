import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { Facts } from '../../parts/Facts.tsx';
import { usePlay } from '../../sound/usePlay.ts';
import { countText } from '../../theory/timing/figure.ts';
import type { TimeJudgement } from '../../theory/timing/judge.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import type { PulseCard } from './ask.ts';
import { Count } from './Count.tsx';
import { judgementOf } from './judge.ts';
import { evenSound, tappedSound } from './sounds.ts';
import { stepsByPlace } from './byPlace.ts';
import { Strip } from './Strip.tsx';
import { useTapping, type Tapping } from './useTapping.ts';
import { CLICKED, figureWords } from './words.ts';
import './Face.css';

/** A bar is counted in; the figure is tapped. After the verdict the taps are drawn against the grid. */
export function Face(props: FaceProps<PulseCard>) {
  const { card, verdict, answer, sounded, guitar } = props;
  const { item, plan } = card;
  const [given, setGiven] = useState<{ card: PulseCard; answer: string } | null>(null);
  const over = (taps: string, count: number) => {
    setGiven({ card, answer: taps });
    answer(taps, count);
  };
  const tapping = useTapping({ card, guitar, sounded, over });
  // Of a card that is looked back on the taps are not kept.
  const taps = given?.card === card ? given.answer : '';
  const judgement = useMemo(() => judgementOf(card, taps), [card, taps]);
  const hear = useHearBoth(card, judgement);
  return (
    <CardFrame
      {...props}
      show={tapping.isOn || tapping.phase === 'handed in' ? undefined : props.show}
      hear={hear}
      question={`Keep ${figureWords(item)} even at ${item.tempo}`}
      hint={`${plan.slots.length} taps · ${CLICKED[item.clicks]}`}
      answers={
        verdict ? (
          <Steps {...{ card, judgement }} />
        ) : (
          <Pad {...{ card, tapping }} isHeard={guitar !== null} />
        )
      }
    >
      {verdict ? <Strip {...{ plan, judgement }} /> : <Count {...{ plan, tapping }} />}
    </CardFrame>
  );
}

/** The taps, with a click where each should have been; without taps the figure as it is meant. */
function useHearBoth(card: PulseCard, judgement: TimeJudgement): () => void {
  const play = usePlay(card);
  const { slots, figure } = card.plan;
  const clicks = slots.map(({ at }) => ({
    at: at.n / at.d,
    accent:
      at.d > 1 ? ('between' as const) : at.n % figure.bar ? ('beat' as const) : ('bar' as const),
    counted: true,
  }));
  return () => void play(tappedSound(card, judgement) ?? evenSound(card), { clicks });
}

interface PadProps {
  card: PulseCard;
  tapping: Tapping;
  /** Whether a string that is struck is a tap too. */
  isHeard: boolean;
}

/** Begins the count; then takes every touch of the lower half, and every key. */
function Pad({ card, tapping, isHeard }: PadProps) {
  const how = isHeard
    ? 'Strike a string, tap here, or press any key'
    : 'Tap here, or press any key';
  const { phase, isOn, taps, begin } = tapping;
  const pad = useRef<HTMLButtonElement>(null);
  useTouches(pad, tapping);
  useKeys(pad, tapping);
  useLeaving(tapping);
  useEffect(() => {
    if (isOn) pad.current?.focus({ preventScroll: true });
  }, [isOn]);
  if (phase === 'handed in') return <div class="tap-pad" />;
  if (!isOn) {
    return (
      <div class="tap-pad">
        {phase === 'held up' && (
          <p role="status">The sound was held up, so this one counts for nothing.</p>
        )}
        <button type="button" class="button main" data-do="hear" onClick={begin}>
          Count me in
        </button>
        <p class="unseen">{countText(card.plan.figure)}</p>
      </div>
    );
  }
  return (
    <button type="button" class="tap-pad on" ref={pad} aria-label={how}>
      <span aria-hidden="true">{taps === 0 ? how : `${taps} of ${card.plan.slots.length}`}</span>
    </button>
  );
}

/** Keys that mean something else than a tap. */
const OTHER = ['Tab', 'Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock'];

type PadRef = { readonly current: HTMLButtonElement | null };

/** What else can be pressed where something happened; null on the pad. */
function otherControl({ target }: Event, pad: PadRef): Element | null {
  const control = (target as Element).closest?.('button, a, input, select') ?? null;
  return control === pad.current ? null : control;
}

/**
 * Takes every touch of the pad as a tap while it is on, and of all else that lies in the lower half of the
 * screen; from the first moment in which the pad is seen.
 */
function useTouches(pad: PadRef, { isOn, tap }: Tapping): void {
  useLayoutEffect(() => {
    if (!isOn) return;
    const touched = (event: PointerEvent) => {
      const isLow = pad.current?.contains(event.target as Node) || 2 * event.clientY > innerHeight;
      if (isLow && !otherControl(event, pad)) tap(event.timeStamp);
    };
    document.addEventListener('pointerdown', touched);
    return () => document.removeEventListener('pointerdown', touched);
  });
}

/** Takes every key as a tap while it is on; Escape stops. */
function useKeys(pad: PadRef, { isOn, tap, stop }: Tapping): void {
  useLayoutEffect(() => {
    if (!isOn) return;
    const pressed = (event: KeyboardEvent) => {
      if (otherControl(event, pad)) return;
      if (event.ctrlKey || event.metaKey || event.altKey || OTHER.includes(event.key)) return;
      event.preventDefault();
      if (event.key === 'Escape') stop();
      else if (!event.repeat) tap(event.timeStamp);
    };
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  });
}

/** Nothing can be said of taps on a page that was out of sight. */
function useLeaving({ isOn, holdUp }: Tapping): void {
  useEffect(() => {
    if (!isOn) return;
    const left = () => document.hidden && holdUp();
    document.addEventListener('visibilitychange', left);
    return () => document.removeEventListener('visibilitychange', left);
  });
}

const ms = (seconds: number) => `${Math.round(1000 * seconds)} ms`;

const lateText = (seconds: number) => `${ms(Math.abs(seconds))} ${seconds < 0 ? 'early' : 'late'}`;

/** How long the steps were, by their place in the beat, and the rest as a table. */
function Steps({ card, judgement }: { card: PulseCard; judgement: TimeJudgement }) {
  const { plan, allowed } = card;
  const steps = stepsByPlace(judgement, plan);
  const { evenness, tempo, lag } = judgement;
  if (!evenness || tempo === null) return null;
  const even = 60 / plan.tempo / plan.figure.division;
  const [low, high] = evenness.range.map((part) => `${Math.round(100 * part)} %`);
  return (
    <div class="tap-steps">
      <p>
        {steps.map(({ name, mean, spread }) => (
          <span key={name}>
            <span class="soft">{name}</span> {ms(mean)}
            {spread !== null && <span class="soft"> ± {Math.round(1000 * spread)}</span>}
          </span>
        ))}
        <span class="soft">even: {ms(even)}</span>
      </p>
      <Facts
        caption="How long the steps were"
        head={['Step', 'Mean', 'Spread', 'Steps']}
        rows={[
          ...steps.map(({ name, mean, spread, count }) => [
            `from note ${name.replace('–', ' to note ')}`,
            ms(mean),
            spread === null ? 'too few' : ms(spread),
            String(count),
          ]),
          ['all', ms(even * (plan.tempo / tempo)), `${low} to ${high}`, String(evenness.steps)],
          [
            'asked for',
            ms(even),
            `at most ${Math.round(100 * allowed)} %`,
            String(plan.slots.length - 1),
          ],
          ...(lag ? [['against the click', lateText(lag.change), `± ${ms(lag.error)}`, '']] : []),
        ]}
      />
    </div>
  );
}
