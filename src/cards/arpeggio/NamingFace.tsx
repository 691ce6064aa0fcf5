import { useState } from 'preact/hooks';
import { midiAt } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { Stair, type Step } from '../../parts/Stair.tsx';
import { pluck } from '../../sound/index.ts';
import { keyLabel } from '../../theory/naming.ts';
import { framed } from './arpeggio.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import type { NamedCard } from './named.ts';

interface NamingFaceProps extends FaceProps<NamedCard> {
  /** The degrees to answer on. */
  steps: readonly Step[];
}

/** Plain dots on the neck, and the staircase of the degrees to answer on. */
export function NamingFace({ steps, ...props }: NamingFaceProps) {
  const { card, verdict, explanation, shown } = props;
  const { key, chord, instrument, shape } = card;
  const [chosen, setChosen] = useState<number | null>(null);
  const judged = steps.map((step) => {
    if (verdict && step.degree === chord.degree) return { ...step, look: 'right' as const };
    if (verdict && step.degree === chosen) return { ...step, look: 'wrong' as const };
    return step;
  });
  const hidden = shape.places.map(({ string, fret, member }) =>
    card.rootShown && member === 1 ? { string, fret, member } : { string, fret },
  );
  const choose = (degree: number) => {
    if (chosen !== null) return;
    setChosen(degree);
    props.answer(String(degree), 1);
  };
  return (
    <CardFrame
      {...props}
      question={`Which degree of ${keyLabel(key, shown.naming)}?`}
      {...(card.rootShown && {
        hint: 'Other degrees hold the same notes: the square is the root.',
      })}
      answers={<Stair steps={judged} label="Degrees" choose={choose} chosen={chosen} />}
      foot={<p class="soft">{chosen === null ? 'Tap its step.' : ''}</p>}
    >
      <Neck
        instrument={instrument}
        musicKey={key}
        naming={shown.naming}
        frets={framed(card.frets, instrument)}
        label="Neck with an arpeggio on it"
        dots={explanation?.dots ?? hidden}
        {...(verdict && { tap: (place) => pluck(midiAt(instrument, place), place.string) })}
      />
    </CardFrame>
  );
}
