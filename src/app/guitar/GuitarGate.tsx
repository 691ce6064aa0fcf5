import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { microphoneState } from '../../listening/index.ts';
import { microphoneSentence } from '../../listening/sentences.ts';
import { hearSilence, measureDelay } from '../../listening/tasks.ts';
import { instrumentId, type Instrument } from '../../neck/instrument.ts';
import { audioContext } from '../../sound/index.ts';
import { useFocusOnTitle } from '../focus.ts';
import { go } from '../router.ts';
import { settings } from '../state.ts';
import { changeGuitar, isTuned, listen, makeReady, putDown } from './inHand.ts';
import { LENT } from './lent.ts';
import { ListeningMark } from './ListeningMark.tsx';
import { TuneUp } from './TuneUp.tsx';
import { tunedBefore } from './tunedBefore.ts';
import { WaysOn } from './WaysOn.tsx';
import './Guitar.css';

interface GuitarGateProps {
  instrument: Instrument;
  /** Goes on with the round: the guitar is ready, or was put down. */
  goOn(): void;
}

/** What comes before the cards of a round with the guitar: it is told, asked for, made still, tuned up. */
export default function GuitarGate({ instrument, goOn }: GuitarGateProps) {
  const without = () => {
    putDown();
    goOn();
  };
  if (!settings.value.guitar.told) return <Told without={without} />;
  if (microphoneState.value !== 'listening') return <Closed without={without} />;
  return <MakingReady instrument={instrument} goOn={goOn} />;
}

interface StepProps {
  title: string;
  buttons?: ComponentChildren;
  children: ComponentChildren;
}

/** One step: its title has the focus, what can be done is under the thumb. */
function Step({ title, buttons, children }: StepProps) {
  const heading = useFocusOnTitle();
  return (
    <main class="screen guitar-step">
      <header class="round-bar">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        <ListeningMark />
        <button type="button" class="bar-button word" onClick={() => go('today')}>
          Leave
        </button>
      </header>
      {children}
      {buttons && <div class="buttons last">{buttons}</div>}
    </main>
  );
}

/** Before the first round: what is heard, and how not to come to harm. */
function Told({ without }: { without(): void }) {
  return (
    <Step
      title="With your guitar"
      buttons={
        <>
          <button type="button" class="button" onClick={without}>
            Not now
          </button>
          <button
            type="button"
            class="button main"
            data-do="listen"
            onClick={() => {
              changeGuitar({ told: true });
              listen();
            }}
          >
            Let the phone listen
          </button>
        </>
      }
    >
      <p>
        In a round, and in a free minute, the phone hears which notes you play. Nothing is recorded,
        and nothing leaves the phone. It will ask you for the microphone.
      </p>
      <h2>Look after yourself</h2>
      <ul class="cautions">
        <li>Stop as soon as playing hurts; ask your teacher, and a doctor when pain stays.</li>
        <li>Begin gently, and rest ten minutes in every hour.</li>
        <li>Keep amplifier and phone low: what is loud for long harms the ear.</li>
      </ul>
    </Step>
  );
}

/** The microphone is not on: why, and the ways on. */
function Closed({ without }: { without(): void }) {
  const isAsking = microphoneState.value === 'asking';
  return (
    <Step
      title={isAsking ? 'May the phone listen?' : 'The phone does not hear you'}
      buttons={<WaysOn without={without} isAsking={isAsking} />}
    >
      <p role="status">
        {microphoneSentence.value ?? 'The microphone is off. It is on only while you play.'}
      </p>
    </Step>
  );
}

/** The microphone is on: silence, then the strings, then the delay. */
function MakingReady({ instrument, goOn }: GuitarGateProps) {
  const [step, setStep] = useState<'silence' | 'before' | 'tuning' | 'delay'>('silence');
  const [found, setFound] = useState(0);
  const before = tunedBefore(instrument, Date.now());
  const ready = (cents: number) => {
    makeReady(cents, LENT);
    goOn();
  };
  const silent = () => {
    // Where the microphone alone was away nothing has to be tuned again.
    if (isTuned.value) ready(before ?? 0);
    else setStep(before === null ? 'tuning' : 'before');
  };
  const tuned = (cents: number | null) => {
    setFound(cents ?? 0);
    if (cents !== null) {
      const at = Date.now();
      changeGuitar({ tuned: { at, instrument: instrumentId(instrument), offset: cents } });
    }
    setStep('delay');
  };
  if (step === 'silence') return <Silence done={silent} />;
  if (step === 'before') {
    return <Before still={() => ready(before ?? 0)} again={() => setStep('tuning')} />;
  }
  if (step === 'delay') return <Delay done={() => ready(found)} />;
  return (
    <Step title="Tune up">
      <TuneUp instrument={instrument} done={tuned} />
    </Step>
  );
}

/** The tap that led here has died away, ms. */
const STILL = 400;

function Silence({ done }: { done(): void }) {
  useEffect(() => {
    let gone = false;
    const timer = setTimeout(() => {
      void hearSilence().then((level) => level !== null && !gone && done());
    }, STILL);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, []);
  return (
    <Step title="Keep still a moment">
      <p>Let no string sound: the phone listens to how quiet the room is.</p>
    </Step>
  );
}

/** It was tuned up today. */
function Before({ still, again }: { still(): void; again(): void }) {
  return (
    <Step
      title="Still in tune?"
      buttons={
        <>
          <button type="button" class="button" data-do="tune" onClick={again}>
            Tune up again
          </button>
          <button type="button" class="button main" data-do="in-tune" onClick={still}>
            Still in tune
          </button>
        </>
      }
    >
      <p>You tuned up today. Strings go down as they warm, and new ones stretch.</p>
    </Step>
  );
}

/** How long it is said that the delay is not known, ms. */
const READ = 5000;

function Delay({ done }: { done(): void }) {
  const [unknown, setUnknown] = useState(false);
  useEffect(() => {
    const context = audioContext();
    if (settings.value.muted || !context) return done();
    const leaving = new AbortController();
    const { signal } = leaving;
    void import('../../sound/click.ts')
      .then(({ renderClick }) => {
        return signal.aborted ? null : measureDelay(renderClick(context.sampleRate), signal);
      })
      .then((delay) => {
        if (signal.aborted) return;
        changeGuitar({ delay });
        if (delay === null) setUnknown(true);
        else done();
      });
    // Whoever skips them hears no click of them in the first card.
    return () => leaving.abort();
  }, []);
  useEffect(() => {
    if (!unknown) return;
    const timer = setTimeout(done, READ);
    return () => clearTimeout(timer);
  }, [unknown]);
  return (
    <Step
      title={unknown ? 'The clicks were not heard' : 'Five clicks'}
      buttons={
        <button type="button" class="button main" data-do="skip" onClick={done}>
          {unknown ? 'Go on' : 'Skip this'}
        </button>
      }
    >
      <p role="status">
        {unknown
          ? 'Headphones keep them from the microphone: how evenly you play can be told, not whether you are early or late.'
          : 'Keep still: the phone hears its own clicks, to know how late sound comes back to it.'}
      </p>
    </Step>
  );
}
