import { useState } from 'preact/hooks';
import { MOST } from '../../../decks/deck.ts';
import type { Explained } from '../../../making/explained.ts';
import { inOtherKey } from '../../../making/varied.ts';
import { keyName, USUAL_TONICS, type Key } from '../../../theory/key.ts';
import { spell } from '../../../theory/spell.ts';
import { absolute, keyLabel, noteLabel, scaleLabel } from '../../../theory/naming.ts';
import type { Phrase } from '../../../theory/phrase.ts';
import { hasSevenNotes, SCALE_KINDS, type ScaleKind } from '../../../theory/scale.ts';
import { settings } from '../../state.ts';
import { useSlices } from './useSlices.ts';
import { Tool } from './Tool.tsx';
import { Variation } from './Variation.tsx';

const SCALES = SCALE_KINDS.filter(hasSevenNotes);

export interface OtherKeyProps {
  explained: Explained;
  /** How many phrases the lesson has. */
  kept: number;
  /** Puts a variation into the lesson; tells the number it has there. */
  keep(phrase: Phrase): number;
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
  const [one] = made;
  const keepHere = (phrase: Phrase) => {
    const number = keep(calledIn(key, phrase));
    setSaid(
      `It is phrase ${number} of this lesson, which stays in ${here}: there its notes are called and read in ${here}.`,
    );
  };
  return (
    <>
      <KeySelects musicKey={key} chosen={other} choose={setOther} />
      <p class="soft" role="status">
        {said || statusWords(same, done, one !== undefined, there)}
      </p>
      {one && (
        <Variation key={keyName(other)} one={one} explained={explained} musicKey={other}>
          <Tool
            name="Keep it in this lesson"
            disabled={kept >= MOST.phrases}
            use={() => keepHere(one.phrase)}
          />
          <Tool name={`A lesson in ${there}`} use={() => begin(other, one.phrase)} />
        </Variation>
      )}
    </>
  );
}

interface KeySelectsProps {
  /** The key of the phrase. */
  musicKey: Key;
  chosen: Key;
  choose(key: Key): void;
}

function KeySelects({ musicKey, chosen, choose }: KeySelectsProps) {
  const { naming } = settings.value;
  const { tonic: own } = musicKey;
  const tonics = USUAL_TONICS.includes(own) ? USUAL_TONICS : [own, ...USUAL_TONICS];
  return (
    <div class="other-key">
      <label>
        <span class="label">Key</span>
        <select
          class="music"
          value={chosen.tonic}
          onChange={(event) => choose({ ...chosen, tonic: event.currentTarget.value })}
        >
          {tonics.map((tonic) => (
            <option key={tonic} value={tonic}>
              {noteLabel(tonic, absolute(naming), musicKey)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span class="label">Scale</span>
        <select
          value={chosen.scale}
          onChange={(event) => choose({ ...chosen, scale: event.currentTarget.value as ScaleKind })}
        >
          {SCALES.map((scale) => (
            <option key={scale} value={scale}>
              {scaleLabel(scale)}
            </option>
          ))}
        </select>
      </label>
    </div>
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
