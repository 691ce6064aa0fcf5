import { useEffect, useState } from 'preact/hooks';
import type { FreeNote } from '../../listening/index.ts';
import { advice } from '../../making/advice.ts';
import { toldOf, type MinuteTold } from '../../making/minute.ts';
import { preload, unlock } from '../../sound/index.ts';
import GuitarGate from '../guitar/GuitarGate.tsx';
import { guitar } from '../guitar/guitar.ts';
import { leave, takeUpFreely } from '../guitar/inHand.ts';
import { route } from '../router.ts';
import { currentLesson, opened, settings, type Lesson } from '../state.ts';
import { Before, usualChoice, type MinuteChoice } from './Before.tsx';
import { KeptLine } from './KeptLine.tsx';
import { figuresOf, keep, minutes, openMinutes, type Minute } from './minutes.ts';
import { PlayingFreely } from './PlayingFreely.tsx';
import { Told } from './Told.tsx';
import '../phrases/Phrases.css';
import './Minute.css';

/** A minute of playing what one likes in the lesson's key; or, by its time in the address, a line that was kept. */
export default function MinuteScreen() {
  useEffect(() => {
    if (opened.value) void openMinutes();
  }, [opened.value]);
  if (!opened.value || minutes.value === null) return <main class="screen" aria-busy="true" />;
  const lesson = currentLesson();
  if (!lesson) return <NoLesson />;
  const kept = minutes.value.find(({ at, line }) => line && String(at) === route.value.rest);
  return kept ? (
    <KeptLine minute={kept} line={kept.line!} />
  ) : (
    <FreeMinute key={lesson.id} lesson={lesson} />
  );
}

function NoLesson() {
  return (
    <main class="screen">
      <h1>A free minute</h1>
      <p>It is played in a lesson’s key. Open the link that your teacher sent, or take a lesson.</p>
      <a class="button main" href="#/today">
        Today
      </a>
    </main>
  );
}

/** Where a minute stands: chosen, the guitar made ready, played, told. */
type Stage =
  | { readonly is: 'before'; readonly notice?: string }
  | { readonly is: 'ready' | 'playing' }
  | { readonly is: 'told'; readonly told: MinuteTold; readonly minute: Minute };

const AWAY = 'The microphone went away, so nothing of it was kept.';
const TOO_FEW =
  'Fewer than twelve single notes were heard, too few to say anything. Play one note at a time, nearer to the phone.';
const SILENT = 'There was no sound to play over, so nothing of it was kept.';

function FreeMinute({ lesson }: { lesson: Lesson }) {
  const { deck, id } = lesson;
  const [choice, setChoice] = useState<MinuteChoice>(() => usualChoice(deck));
  const [stage, setStage] = useState<Stage>({ is: 'before' });
  const isHeard = guitar.value !== null;
  useEffect(() => {
    void preload();
    return leave;
  }, []);
  useEffect(() => {
    if (stage.is === 'playing' && !isHeard) setStage({ is: 'before', notice: AWAY });
  }, [isHeard]);
  const begin = () => {
    unlock();
    takeUpFreely();
    setStage({ is: 'ready' });
  };
  const over = (heard: readonly FreeNote[] | null) => {
    leave();
    const { tempo, headphones } = choice;
    // What was measured was the loudspeaker's.
    const isMeasured = !headphones && settings.value.guitar.delay !== null;
    const told = heard && toldOf({ ...deck, heard, isMeasured, tempo });
    if (!told) return setStage({ is: 'before', notice: heard ? TOO_FEW : SILENT });
    const minute = { lesson: id, at: Date.now(), figures: figuresOf(told, tempo), line: null };
    void keep(minute);
    setStage({ is: 'told', told, minute });
  };
  switch (stage.is) {
    case 'before':
      return <Before {...{ lesson, choice, begin }} change={setChoice} notice={stage.notice} />;
    case 'ready':
      return (
        <GuitarGate
          instrument={deck.instrument}
          goOn={() => setStage({ is: guitar.value ? 'playing' : 'before' })}
        />
      );
    case 'playing':
      return <PlayingFreely {...{ deck, over }} {...choice} />;
    case 'told':
      return (
        <Told key={stage.minute.at} {...stage} advice={advice(stage.told, deck)} again={begin} />
      );
  }
}
