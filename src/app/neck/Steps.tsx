import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { Stair, type Step } from '../../parts/Stair.tsx';
import { noteLabel, type Naming } from '../../theory/naming.ts';
import { degreeOf } from '../../theory/key.ts';
import { hasSevenNotes, scaleNotes } from '../../theory/scale.ts';
import { settings } from '../state.ts';
import { chordsOf } from './dots.ts';
import { steppedTo, type View } from './view.ts';
import { shapeSentences, stepWords } from './viewWords.ts';

interface StepsProps {
  view: View;
  change(view: View): void;
  hear(): void;
  /** Null where there is nothing to play. */
  playAlong: (() => void) | null;
}

/** The stair of the arpeggios, and above it what the last step did to the notes. */
export function Steps({ view, change, hear, playAlong }: StepsProps) {
  const { key, size, degree } = view;
  const { naming, chordNames } = settings.value;
  const stacked = hasSevenNotes(key.scale);
  // Longer names than those of sevenths do not fit on a step.
  const named = chordNames && (size === 'triad' || size === 'seventh');
  return (
    <div class="steps">
      <div class="told">
        <p role="status">
          <Told view={view} />
        </p>
        <button type="button" class="button small" data-do="hear" onClick={hear}>
          Hear
        </button>
        {playAlong && (
          <button type="button" class="button small" onClick={playAlong}>
            Play along
          </button>
        )}
      </div>
      {stacked ? (
        <Stair
          steps={degreeSteps(key, size, { naming, chordNames: named })}
          label={`Arpeggios: ${size}s`}
          choose={(step) => change(steppedTo(view, step))}
          pressed={degree}
        />
      ) : (
        <Stair steps={plainSteps(view, naming)} label="The scale’s notes" />
      )}
    </div>
  );
}

/** A scale on which no chords are stacked still has its steps: the notes. */
function plainSteps({ key }: View, naming: Naming): Step[] {
  return scaleNotes(key).map((note) => ({
    degree: degreeOf(key, note)!,
    numeral: noteLabel(note, 'degrees', key),
    name: noteLabel(note, naming, key),
  }));
}

function Told({ view }: { view: View }) {
  const { naming } = settings.value;
  const { chord, former } = chordsOf(view);
  if (!hasSevenNotes(view.key.scale))
    return <>No chords are stacked on this scale. Tap a place to hear it.</>;
  if (!chord) return <>Tap a step for its arpeggio, a place to hear it.</>;
  const shape = shapeSentences(view, naming);
  if (shape.length > 0) return <>{shape.join(' ')}</>;
  if (!former) {
    const notes = chord.notes.map((note) => noteLabel(note, naming, view.key)).join(' ');
    return <>{notes}. Tap another step to compare, this one for the whole key.</>;
  }
  const { from, parts } = stepWords(former, chord, naming);
  return (
    <>
      {from}:{' '}
      {parts.map(({ look, words }, index) => {
        const [first = '', ...rest] = words.split(' ');
        return (
          <span key={look}>
            <span class="held">
              <span class={`mark ${look}`} aria-hidden="true" />
              {first}
            </span>
            {` ${rest.join(' ')}${index < parts.length - 1 ? ', ' : '.'}`}
          </span>
        );
      })}
    </>
  );
}
