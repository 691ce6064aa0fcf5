import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { fretsLeft } from '../../neck/instrument.ts';
import { midiAt } from '../../neck/place.ts';
import { isLeftHanded } from '../../parts/handedness.ts';
import { bringIntoSight } from '../../parts/inSight.ts';
import { Neck } from '../../parts/Neck.tsx';
import { pluck } from '../../sound/index.ts';
import { route } from '../router.ts';
import { currentLesson, opened, settings } from '../state.ts';
import { readView, writeView } from './address.ts';
import { viewDots, upAndDown } from './dots.ts';
import { Head } from './Head.tsx';
import { useLies } from './lies.ts';
import { More } from './More.tsx';
import { PlayRun } from './PlayRun.tsx';
import { usePrinting } from './printing.ts';
import { settled } from './shape.ts';
import { ShapeMoves } from './ShapeMoves.tsx';
import { Steps } from './Steps.tsx';
import { useRun } from './run.ts';
import { plainView, type View } from './view.ts';
import { sheetWords, viewTitle } from './viewWords.ts';
import './NeckScreen.css';
import './PrintedNeck.css';

/** A key, scale or arpeggio on the whole neck. The address says all of what is shown. */
export default function NeckScreen() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  return <Opened />;
}

/** What an address asks for, or the key of the lesson practised, and what was wrong with it. */
function viewAt(address: string): { view: View; fault: string | null } {
  const deck = currentLesson()?.deck;
  const plain = plainView(deck?.key ?? { tonic: 'Bb', scale: 'major' }, deck?.instrument);
  if (address === '') return { view: plain, fault: null };
  const read = readView(address);
  return 'fault' in read ? { view: plain, fault: read.fault } : { view: read, fault: null };
}

function Opened() {
  const asked = route.value;
  const [{ view, fault }, setState] = useState(() => viewAt(asked.rest));
  const [more, setMore] = useState(false);
  const first = useRef(asked);
  useEffect(() => {
    if (asked !== first.current && asked.screen === 'neck') setState(viewAt(asked.rest));
  }, [asked]);

  const change = (next: View) => {
    const sound = settled(next);
    setState({ view: sound, fault: null });
    // Not `go`: looking around on one neck is no way that one wants to go back step by step.
    history.replaceState(history.state, '', `#/neck/${writeView(sound)}`);
  };
  const printing = usePrinting();
  const choosing = more && !printing;
  return (
    <main class="screen whole-neck">
      <h1 class="unseen">{viewTitle(view, settings.value.naming)}</h1>
      <p class="sheet-words">{sheetWords(view, settings.value.naming)}</p>
      <Head view={view} change={change} more={more} setMore={setMore} />
      {fault && (
        <p class="notice bad" role="alert">
          {fault}
        </p>
      )}
      {choosing ? <More view={view} change={change} /> : <Looked {...{ view, change, printing }} />}
    </main>
  );
}

/** The neck and the stair under it. */
function Looked(props: { view: View; change(view: View): void; printing: boolean }) {
  const { view, change, printing } = props;
  const { naming } = settings.value;
  const dots = useMemo(() => viewDots(view, naming), [view, naming]);
  const lies = useLies() || printing;
  const { lit, hear } = useRun(view);
  const [along, setAlong] = useState(false);
  const run = useMemo(() => upAndDown(view), [view]);
  const frame = useRef<HTMLDivElement>(null);
  const { instrument, where } = view;
  const lowest =
    where && 'frets' in where
      ? where.frets[0]
      : where && 'shape' in where
        ? Math.min(...dots.map(({ fret }) => fret))
        : 0;

  // The nut, or the position or shape chosen, comes into sight.
  useEffect(() => {
    const neck = frame.current!;
    const to = neck.querySelector<HTMLElement>(`[data-fret="${lowest}"]`);
    if (!to) return;
    const names = neck.querySelector<HTMLElement>('.string-name')!;
    const left = isLeftHanded(instrument)
      ? to.offsetLeft + to.offsetWidth + names.offsetWidth - neck.clientWidth
      : to.offsetLeft - names.offsetWidth;
    neck.scrollTo(lies ? { left, top: 0 } : { left: 0, top: to.offsetTop - names.offsetHeight });
    if (!where) return;
    for (const dot of [...neck.querySelectorAll('[data-dot]')].toReversed())
      bringIntoSight(neck, dot);
  }, [where, lowest, lies, isLeftHanded(instrument)]);

  return (
    <>
      <div class="neck-frame" ref={frame}>
        <Neck
          instrument={instrument}
          musicKey={view.key}
          naming={naming}
          frets={[0, fretsLeft(instrument)]}
          label={`Neck: ${viewTitle(view, naming)}`}
          dots={dots}
          lit={lit}
          tap={(place) => pluck(midiAt(instrument, place), place.string)}
          lies={lies}
          beside={false}
        />
      </div>
      {where && 'shape' in where && <ShapeMoves view={view} change={change} lies={lies} />}
      <Steps {...{ view, change, hear }} playAlong={run.length > 0 ? () => setAlong(true) : null} />
      {along && <PlayRun {...{ view, run }} close={() => setAlong(false)} />}
    </>
  );
}
