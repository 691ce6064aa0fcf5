import {
  CONTOURS,
  isPhraseDrill,
  isTimeDrill,
  RHYTHMS,
  WAYS,
  type Drill,
  type EarDrill,
  type NeckDrill,
  type OfPhrases,
  type PlayDrill,
  type PlayPhrasesDrill,
  type TimeDrill,
} from '../../decks/deck.ts';
import { DRILLED_FIGURES } from '../../decks/drills/time.ts';
import { isKindOf } from '../../decks/kinds.ts';
import { drillOf, TEMPO } from '../../making/draft.ts';
import { SHAPE_CHOICES } from '../../neck/shapeChoice.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { CLICKS, type Clicks } from '../../theory/timing/clicks.ts';
import { TempoField } from '../TempoField.tsx';
import { draft } from './kept/openDraft.ts';
import { Many } from './Many.tsx';
import { DegreeChoice, FretChoice, SizeChoice, StringChoice } from './TogetherChoices.tsx';

/** What a drill asks, to be changed. */
export function DrillTuning({ drill, set }: { drill: Drill; set(drill: Drill): void }) {
  const { key } = draft.value;
  if (isTimeDrill(drill)) return <TimeTuning drill={drill} set={set} />;
  if (isPhraseDrill(drill)) return <PhraseTuning drill={drill} set={set} />;
  return (
    <>
      <OfWhat drill={drill} set={set} />
      <DegreeChoice
        musicKey={key}
        size={drill.sizes[0]}
        degrees={drill.degrees}
        choose={(degrees) => set({ ...drill, degrees })}
      />
      <SizeChoice sizes={drill.sizes} choose={(sizes) => set({ ...drill, sizes })} />
      {'contours' in drill ? (
        <EarTuning drill={drill} set={set} />
      ) : (
        <NeckTuning drill={drill} set={set} />
      )}
    </>
  );
}

/** Where on the neck, and of what is played how. */
function NeckTuning({ drill, set }: { drill: NeckDrill | PlayDrill; set(drill: Drill): void }) {
  const { instrument } = draft.value;
  return (
    <>
      <StringChoice
        instrument={instrument}
        strings={drill.strings}
        choose={(strings) => set({ ...drill, strings })}
      />
      <FretChoice
        instrument={instrument}
        frets={drill.frets}
        choose={(frets) => set({ ...drill, frets })}
      />
      <ShapeTuning drill={drill} set={set} />
      {'ways' in drill && <PlayTuning drill={drill} set={set} />}
    </>
  );
}

/** Whether the root is the lowest note, or another, or any. */
function ShapeTuning({ drill, set }: { drill: NeckDrill | PlayDrill; set(drill: Drill): void }) {
  const { shapes, ...ofAll } = drill;
  return (
    <Choices legend="Shapes">
      <Choice
        name="shapes"
        label="all"
        checked={shapes === undefined}
        change={() => set(ofAll as Drill)}
      />
      {SHAPE_CHOICES.map((choice) => (
        <Choice
          key={choice}
          name="shapes"
          label={choice}
          checked={shapes === choice}
          change={() => set({ ...drill, shapes: choice })}
        />
      ))}
    </Choices>
  );
}

/** Kinds that are drilled from phrases too: whether the key's arpeggios are asked for, or those of the phrases. */
function OfWhat({ drill, set }: { drill: Drill; set(drill: Drill): void }) {
  const { kind } = drill;
  if (draft.value.phrases.length === 0) return null;
  if (!isKindOf('played', kind) && !isKindOf('echoed', kind)) return null;
  const ofPhrases = isPhraseDrill(drill);
  return (
    <Choices legend="Arpeggios">
      <Choice
        name="arpeggios"
        label="of the key"
        checked={!ofPhrases}
        change={() => set(drillOf(kind, draft.value))}
      />
      <Choice
        name="arpeggios"
        label="of the phrases"
        checked={ofPhrases}
        change={() => set({ kind } as OfPhrases)}
      />
    </Choices>
  );
}

interface PlayTuningProps {
  drill: PlayDrill;
  set(drill: Drill): void;
}

/** Which way arpeggios are played, and how fast. */
function PlayTuning({ drill, set }: PlayTuningProps) {
  return (
    <>
      <Many
        legend="Played"
        all={WAYS}
        chosen={drill.ways}
        label={(way) => WAY_NAMES[way]}
        choose={(ways) => set({ ...drill, ways })}
      />
      <Pace drill={drill} set={set} />
    </>
  );
}

const WAY_NAMES = { up: 'up', down: 'down', turn: 'up and back' } as const;

/** At leisure, or at a tempo after a count. */
function Pace({ drill, set }: { drill: PlayDrill | PlayPhrasesDrill; set(drill: Drill): void }) {
  const { tempo, ...atLeisure } = drill;
  return (
    <>
      <Choices legend="Time">
        <Choice
          name="pace"
          label="at leisure"
          checked={tempo === undefined}
          change={() => set(atLeisure)}
        />
        <Choice
          name="pace"
          label="at a tempo, after a count"
          checked={tempo !== undefined}
          change={() => set({ ...drill, tempo: TEMPO })}
        />
      </Choices>
      {tempo !== undefined && (
        <TempoField tempo={tempo} set={(chosen) => set({ ...drill, tempo: chosen })} />
      )}
    </>
  );
}

interface EarTuningProps {
  drill: EarDrill | EarDrill<'echo'>;
  set(drill: Drill): void;
}

function EarTuning({ drill, set }: EarTuningProps) {
  const { rhythm = 'triplets' } = drill;
  const choose = (chosen: EarDrill['rhythm']) => {
    const { rhythm: _, ...rest } = drill;
    set(chosen === 'triplets' ? rest : { ...rest, rhythm: chosen! });
  };
  return (
    <>
      <Many
        legend="Contours"
        all={CONTOURS}
        chosen={drill.contours}
        label={(contour) => contour}
        choose={(contours) => set({ ...drill, contours })}
      />
      <Choices legend="Notes are">
        {RHYTHMS.map((one) => (
          <Choice
            key={one}
            name="rhythm"
            label={one}
            checked={one === rhythm}
            change={() => choose(one)}
          />
        ))}
      </Choices>
      <TempoField tempo={drill.tempo} set={(tempo) => set({ ...drill, tempo })} />
    </>
  );
}

function PhraseTuning({ drill, set }: { drill: OfPhrases; set(drill: Drill): void }) {
  const all = draft.value.phrases.map((_, i) => String(i + 1));
  const { phrases, ...ofAll } = drill;
  if (all.length === 0) return null;
  return (
    <>
      <OfWhat drill={drill} set={set} />
      <Many
        legend="Phrases"
        all={all}
        chosen={phrases?.map(String) ?? all}
        label={(number) => `phrase ${number}`}
        choose={(chosen) =>
          set(chosen.length === all.length ? ofAll : { ...ofAll, phrases: chosen.map(Number) })
        }
      />
      {drill.kind === 'play' && <Pace drill={drill} set={set} />}
    </>
  );
}

/** The tempos that are offered, beside those that a lesson has of its own. */
const TEMPOS = [48, 60, 72, 84, 96, 108, 120, 132, 144];

const CLICKED: Readonly<Record<Clicks, string>> = {
  beat: 'on every beat',
  bar: 'on the first of the bar',
  gone: 'gone for every second bar',
};

function TimeTuning({ drill, set }: { drill: TimeDrill; set(drill: Drill): void }) {
  const tempos = [...new Set([...TEMPOS, ...drill.tempos])].toSorted((a, b) => a - b);
  return (
    <>
      <Many
        legend="Figures"
        all={DRILLED_FIGURES}
        chosen={drill.figures}
        label={(figure) => (figure === 'phrase' ? 'the phrase’s own rhythm' : figure)}
        choose={(figures) => set({ ...drill, figures })}
      />
      <Many
        legend="Quarter notes a minute, one step after the other"
        all={tempos.map(String)}
        chosen={drill.tempos.map(String)}
        label={(tempo) => tempo}
        choose={(chosen) => set({ ...drill, tempos: chosen.map(Number) })}
      />
      <Many
        legend="The click"
        all={CLICKS}
        chosen={drill.clicks}
        label={(clicks) => CLICKED[clicks]}
        choose={(clicks) => set({ ...drill, clicks })}
      />
    </>
  );
}
