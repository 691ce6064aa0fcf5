import { degreeSteps } from '../arpeggio/degreeSteps.ts';
import { withBorrowed } from '../arpeggio/borrowedSteps.ts';
import type { FaceProps } from '../kind.ts';
import { NamingFace } from '../arpeggio/NamingFace.tsx';
import type { OutlineCard } from './ask.ts';

/** An arpeggio of the phrase as plain dots, and the staircase to answer on. */
export function Face(props: FaceProps<OutlineCard>) {
  const { key, chord } = props.card;
  const steps = withBorrowed(
    degreeSteps(key, chord.size, props.shown),
    key,
    chord.size,
    props.shown,
  );
  return <NamingFace {...props} steps={steps} />;
}
