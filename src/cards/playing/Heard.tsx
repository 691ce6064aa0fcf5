import { Fragment } from 'preact';
import type { Performance, NoteVerdict } from '../../listening/listening.ts';
import { spell } from '../../theory/spell.ts';
import { noteLabel } from '../../theory/naming.ts';
import type { Shown } from '../kind.ts';
import type { PlayingCard } from './card.ts';
import { heardLabel } from './words.ts';
import './Heard.css';

interface HeardProps {
  card: PlayingCard;
  shown: Shown;
  performance: Performance | null;
  /** Notes told right at once, by their index. */
  lit: ReadonlySet<number>;
  /** Whether what was asked may be read. */
  told: boolean;
}

/** A place for each note asked, in which it is shown what came; what came beside them stands between. */
export function Heard(props: HeardProps) {
  const { card, performance } = props;
  const after = (index: number) =>
    (performance?.extras ?? [])
      .filter((extra) => extra.after === index)
      .map(({ heard }, i) => <ExtraNote key={`${index}+${i}`} heard={heard} {...props} />);
  return (
    <ol class="heard" aria-label="Notes asked, and what was heard">
      {after(-1)}
      {card.notes.map((_, index) => (
        <Fragment key={index}>
          <AskedNote index={index} verdict={performance?.notes[index] ?? null} {...props} />
          {after(index)}
        </Fragment>
      ))}
    </ol>
  );
}

/** What is said of a note beside its colour and form. */
const SAID = { right: 'right', wrong: 'another note', missing: 'missing', unheard: 'not heard' };

function AskedNote({
  card,
  shown,
  index,
  verdict,
  lit,
  told,
}: HeardProps & { index: number; verdict: NoteVerdict | null }) {
  const { key } = card;
  const asked = card.notes[index]!;
  const name = noteLabel(asked.name, shown.naming, key);
  const isRight = verdict ? verdict.verdict === 'right' : lit.has(index);
  const heard = verdict && verdict.verdict !== 'unheard' ? verdict.verdict : undefined;
  const other =
    verdict?.verdict === 'wrong' ? heardLabel(verdict.heard, asked.midi, key, shown.naming) : null;
  return (
    <li data-heard={heard} class={isRight ? 'lit' : ''}>
      <span class="came music">{isRight ? name : (other ?? (heard ? '–' : index + 1))}</span>
      {told && !isRight && <span class="asked music">{name}</span>}
      {verdict && <span class="unseen">{SAID[verdict.verdict]}</span>}
    </li>
  );
}

function ExtraNote({ heard, card, shown }: HeardProps & { heard: number }) {
  return (
    <li data-heard="extra">
      <span class="came music">+{noteLabel(spell(card.key, heard), shown.naming, card.key)}</span>
      <span class="unseen">heard beside them</span>
    </li>
  );
}
