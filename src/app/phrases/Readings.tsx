import { SURE, type Group } from '../../theory/analysis/analysis.ts';
import type { Ruling } from '../../theory/analysis/ruling.ts';
import { chordOn, type Chord, type Size } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { parentScale } from '../../theory/scale.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { settings } from '../state.ts';
import { ruled } from './rulings.ts';
import type { Explained } from './explained.ts';
import { chordWords } from './words.ts';

interface ReadingsProps {
  explained: Explained;
  rulings: readonly Ruling[];
  rule(rulings: readonly Ruling[]): void;
}

const SIZES: readonly Size[] = ['triad', 'seventh', 'ninth'];

/** What each group of notes outlines and how sure that is; the teacher has the last word. */
export function Readings({ explained, rulings, rule }: ReadingsProps) {
  return (
    <section class="readings">
      <h2>What it outlines</h2>
      <ul>
        {explained.analysis.groups.map((group) => (
          <li key={group.from}>
            <Reading {...{ group, rulings, rule }} musicKey={explained.key} />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface ReadingProps extends Omit<ReadingsProps, 'explained'> {
  group: Group;
  musicKey: Key;
}

function Reading({ group, rulings, rule, musicKey }: ReadingProps) {
  const { from, to, chord, confidence, alternatives } = group;
  const said = settings.value;
  const decided = rulings.some(
    (ruling) => 'span' in ruling && ruling.span[0] === from && ruling.span[1] === to,
  );
  const notes = to - from === 1 ? `Note ${to}` : `Notes ${from + 1} to ${to}`;
  const span = [from, to] as const;
  const decide = (wanted: Chord | null) =>
    rule(ruled(rulings, span, wanted && { span, chord: wanted }));
  const found = [chord, ...alternatives.map((other) => other.chord)];
  const all = [...found, ...chordsOf(musicKey)].filter(
    (one, index, list) => list.findIndex(({ symbol }) => symbol === one.symbol) === index,
  );
  const sure = decided ? 'as you say' : `${Math.round(confidence * 100)} % sure`;
  const asks = !decided && confidence < SURE && alternatives.length > 0;
  return (
    <>
      <label class="reading">
        <span>
          {notes} <span class="soft">· {sure}</span>
        </span>
        <select
          class="music"
          value={chord.symbol}
          onChange={(event) =>
            decide(all.find(({ symbol }) => symbol === event.currentTarget.value) ?? null)
          }
        >
          {all.map((one) => (
            <option key={one.symbol} value={one.symbol}>
              {chordWords(one, said)}
            </option>
          ))}
          {decided && <option value="">let it be found</option>}
        </select>
      </label>
      {asks && (
        <Choices
          legend={`${notes}: ${chordWords(chord, said)}, or ${alternatives.map((other) => chordWords(other.chord, said)).join(', or ')}?`}
        >
          {found.map((one) => (
            <Choice
              key={one.symbol}
              music
              name={`reading ${from}`}
              label={chordWords(one, said)}
              checked={false}
              change={() => decide(one)}
            />
          ))}
        </Choices>
      )}
    </>
  );
}

/** Every chord that a group may be said to outline. */
function chordsOf({ tonic, scale }: Key): Chord[] {
  const key = { tonic, scale: parentScale(scale) };
  return SIZES.flatMap((size) => [1, 2, 3, 4, 5, 6, 7].map((degree) => chordOn(key, degree, size)));
}
