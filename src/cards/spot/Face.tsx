import { degreeSteps } from '../arpeggio/degreeSteps.ts';
import type { FaceProps } from '../kind.ts';
import type { NamedCard } from '../arpeggio/named.ts';
import { NamingFace } from '../arpeggio/NamingFace.tsx';

/** An arpeggio as plain dots, and the staircase to answer on. */
export function Face(props: FaceProps<NamedCard>) {
  const { key, chord } = props.card;
  return <NamingFace {...props} steps={degreeSteps(key, chord.size, props.shown)} />;
}
