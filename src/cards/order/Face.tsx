import { useState } from 'preact/hooks';
import { numberWord } from '../../parts/english.ts';
import { keyLabel } from '../../theory/naming.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import { notesText } from '../excerpt/excerpt.ts';
import { HearingButtons, useHearing } from '../frame/Hearing.tsx';
import type { FaceProps } from '../kind.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import { Paths } from '../frame/Paths.tsx';
import { PhraseNeck } from '../excerpt/PhraseNeck.tsx';
import type { OrderCard } from './ask.ts';
import { orderLabel } from './explain.ts';

/** The key is sounded, then a stretch of the phrase; four orders of its arpeggios to choose from. */
export function Face(props: FaceProps<OrderCard>) {
  const { card, verdict, explanation, shown } = props;
  const { key, phrase, excerpt, right } = card;
  const [chosen, setChosen] = useState<string | null>(null);
  const hearing = useHearing({ ...props, asked: phraseSound(phrase), keyFirst: true });
  const choose = (answer: string) => {
    if (chosen !== null) return;
    setChosen(answer);
    props.answer(answer, 1);
  };
  return (
    <CardFrame
      {...props}
      hear={hearing.hearAnswer}
      attributes={{ 'data-notes': verdict ? notesText(phrase.notes) : undefined }}
      question="In which order?"
      hint={`${keyLabel(key, shown.naming)} · ${numberWord(right.groups.length)} arpeggios`}
      answers={
        <Paths
          label="Orders"
          paths={card.choices.map((order) => ({
            answer: order.answer,
            content: <span class="row">{orderLabel(order)}</span>,
          }))}
          right={right.answer}
          judged={verdict !== null}
          {...{ chosen, choose }}
        />
      }
    >
      {explanation ? (
        <PhraseNeck {...props} places={excerpt.notes.map(({ place }) => place)} lit={hearing.lit} />
      ) : (
        <HearingButtons hearing={hearing} what="the phrase" />
      )}
    </CardFrame>
  );
}
