import { TRIPLET } from '../../../making/entry.ts';
import { Choice, Choices } from '../../../parts/Choices.tsx';
import { NoteGlyph } from '../../../parts/NoteGlyph.tsx';
import { beats, compare, type Beats } from '../../../theory/rhythm.ts';
import { dotted, noteValue } from '../../../theory/value.ts';

const LENGTHS: readonly (readonly [Beats, string])[] = [
  [TRIPLET, 'triplets'],
  [beats(1, 2), 'eighths'],
  [beats(1, 4), 'sixteenths'],
  [beats(1), 'quarters'],
  [beats(2), 'halves'],
];

interface LengthChoiceProps {
  legend: string;
  length: Beats;
  set(length: Beats): void;
}

/** How long a note is: one tap for a triplet as for an eighth. */
export function LengthChoice({ legend, length, set }: LengthChoiceProps) {
  const value = noteValue(length);
  const plain = value?.dotted ? dotted(length, false) : length;
  return (
    <Choices legend={legend}>
      {LENGTHS.map(([one, name]) => (
        <Choice
          key={name}
          name="length"
          label={name}
          checked={compare(one, plain) === 0}
          change={() => set(one)}
        >
          <NoteGlyph length={one} />
        </Choice>
      ))}
      <Choice
        label="dotted"
        checked={value?.dotted ?? false}
        disabled={!value || value.triplet}
        change={(on) => set(dotted(length, on))}
      >
        <NoteGlyph length={beats(3, 2)} />
      </Choice>
    </Choices>
  );
}
