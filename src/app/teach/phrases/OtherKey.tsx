import { useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import type { Explained } from '../../../making/explained.ts';
import { inOtherKey } from '../../../making/varied.ts';
import { keyName, spell, USUAL_TONICS, type Key } from '../../../theory/key.ts';
import { keyLabel, noteLabel, scaleLabel } from '../../../theory/naming.ts';
import type { Phrase } from '../../../theory/phrase.ts';
import { hasSevenNotes, SCALE_KINDS, type ScaleKind } from '../../../theory/scale.ts';
import { settings } from '../../state.ts';
import { useSlices } from './slices.ts';
import { Variation } from './Variation.tsx';

const SCALES = SCALE_KINDS.filter(hasSevenNotes);

export interface OtherKeyProps {
  explained: Explained;
  /** How many phrases the lesson has. */
  kept: number;
  /** Puts a variation into the lesson. */
  keep(phrase: Phrase): void;
  /** Begins another lesson, in the key of a variation, with it. */
  begin(key: Key, phrase: Phrase): void;
}

/** The phrase on the same degrees of a key to be chosen: a phrase of this lesson, or the first one of another. */
export function OtherKey({ explained, kept, keep, begin }: OtherKeyProps) {
  const { key } = explained;
  const [other, setOther] = useState<Key>(key);
  const [said, setSaid] = useState('');
  const same = keyName(other) === keyName(key);
  const { made, done } = useSlices(
    () => (same ? [].values() : inOtherKey(explained, other)),
    [explained, other],
  );
  const { naming } = settings.value;
  const [here, there] = [keyLabel(key, naming), keyLabel(other, naming)];
  const absolute = naming === 'degrees' || naming === 'movable' ? 'english' : naming;
  const tonics = USUAL_TONICS.includes(key.tonic) ? USUAL_TONICS : [key.tonic, ...USUAL_TONICS];
  const [one] = made;
  return (
    <>
      <div class="other-key">
        <label>
          <span class="label">Key</span>
          <select
            class="music"
            value={other.tonic}
            onChange={(event) => setOther({ ...other, tonic: event.currentTarget.value })}
          >
            {tonics.map((tonic) => (
              <option key={tonic} value={tonic}>
                {noteLabel(tonic, absolute, key)}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span class="label">Scale</span>
          <select
            value={other.scale}
            onChange={(event) =>
              setOther({ ...other, scale: event.currentTarget.value as ScaleKind })
            }
          >
            {SCALES.map((scale) => (
              <option key={scale} value={scale}>
                {scaleLabel(scale)}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p class="soft" role="status">
        {said || statusWords(same, done, one !== undefined, there)}
      </p>
      {one && (
        <Variation key={keyName(other)} one={one} explained={explained} musicKey={other}>
          <button
            type="button"
            class="button small"
            disabled={kept >= MOST.phrases}
            onClick={() => {
              keep(calledIn(key, one.phrase));
              setSaid(
                `It is phrase ${kept + 1} of this lesson, which stays in ${here}: there its notes are called and read in ${here}.`,
              );
            }}
          >
            Keep it in this lesson
          </button>
          <button type="button" class="button small" onClick={() => begin(other, one.phrase)}>
            A lesson in {there}
          </button>
        </Variation>
      )}
    </>
  );
}

function statusWords(same: boolean, done: boolean, made: boolean, there: string): string {
  if (same) return 'Choose another key or another scale.';
  if (made) return '';
  return done ? `It does not lie on this neck in ${there}.` : 'One moment …';
}

/** The same notes by the names that a key has for them. */
function calledIn(key: Key, { tempo, notes }: Phrase): Phrase {
  return { tempo, notes: notes.map((note) => ({ ...note, name: spell(key, note.midi) })) };
}
