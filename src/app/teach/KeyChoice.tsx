import { useState } from 'preact/hooks';
import { inKey } from '../../making/draft.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import type { Key } from '../../theory/key.ts';
import { noteLabel, scaleLabel } from '../../theory/naming.ts';
import { hasSevenNotes, SCALE_KINDS, type ScaleKind } from '../../theory/scale.ts';
import { settings } from '../state.ts';
import { change, draft } from './kept/openDraft.ts';

const USUAL_TONICS = ['C', 'G', 'D', 'A', 'E', 'F', 'Bb', 'Eb', 'Ab'];
const MORE_TONICS = ['B', 'F#', 'C#', 'G#', 'D#', 'A#', 'Db', 'Gb', 'Cb'];
const USUAL_SCALES: readonly ScaleKind[] = ['major', 'minor'];
const OTHER_SCALES = SCALE_KINDS.filter(
  (kind) => hasSevenNotes(kind) && !USUAL_SCALES.includes(kind),
);

/** The key of the lesson: its tonic and any scale of seven notes. */
export function KeyChoice() {
  const { key } = draft.value;
  const [more, setMore] = useState(MORE_TONICS.includes(key.tonic));
  const [other, setOther] = useState(OTHER_SCALES.includes(key.scale));
  const naming =
    settings.value.naming === 'german' || settings.value.naming === 'solfege'
      ? settings.value.naming
      : 'english';
  const choose = (part: Partial<Key>) =>
    change(inKey({ ...draft.value.key, ...part }, draft.value.phrases));
  return (
    <>
      <Choices legend="Key">
        {[...USUAL_TONICS, ...(more ? MORE_TONICS : [])].map((tonic) => (
          <Choice
            key={tonic}
            music
            name="tonic"
            label={noteLabel(tonic, naming, key)}
            checked={key.tonic === tonic}
            change={() => choose({ tonic })}
          />
        ))}
        {!more && (
          <button type="button" class="button small" onClick={() => setMore(true)}>
            more keys
          </button>
        )}
      </Choices>
      <Choices legend="Scale">
        {[...USUAL_SCALES, ...(other ? OTHER_SCALES : [])].map((scale) => (
          <Choice
            key={scale}
            name="scale"
            label={scaleLabel(scale)}
            checked={key.scale === scale}
            change={() => choose({ scale })}
          />
        ))}
        {!other && (
          <button type="button" class="button small" onClick={() => setOther(true)}>
            other scales
          </button>
        )}
      </Choices>
    </>
  );
}
