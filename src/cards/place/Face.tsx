import { chordLabel } from '../../theory/naming.ts';
import { framed } from '../arpeggio/arpeggio.ts';
import { shapeWords } from '../arpeggio/words.ts';
import type { FaceProps } from '../kind.ts';
import type { PlacingCard } from '../arpeggio/placing.ts';
import { PlacingFace } from '../arpeggio/PlacingFace.tsx';

/** The chord is named; its notes are tapped onto the neck. */
export function Face(props: FaceProps<PlacingCard>) {
  const { chord, frets, instrument, shapes } = props.card;
  return (
    <PlacingFace
      {...props}
      question={`Place ${chordLabel(chord, props.shown.naming)}${shapeWords(shapes)}`}
      drawn={framed(frets, instrument)}
    />
  );
}
