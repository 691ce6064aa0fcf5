import { useState } from 'preact/hooks';
import { CardFrame } from '../frame/CardFrame.tsx';
import { notesText } from '../excerpt/excerpt.ts';
import { HearingButtons, useHearing } from '../frame/Hearing.tsx';
import type { FaceProps } from '../kind.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import { Paths } from '../frame/Paths.tsx';
import { PhraseNeck } from '../excerpt/PhraseNeck.tsx';
import type { VaryCard } from './ask.ts';

/** A stretch of the phrase is heard, then a variation of it; four names of variations to choose from. */
export function Face(props: FaceProps<VaryCard>) {
  const { card, verdict, explanation } = props;
  const { heard, right } = card;
  const [chosen, setChosen] = useState<string | null>(null);
  const hearing = useHearing({ ...props, asked: phraseSound(heard), keyFirst: false });
  const choose = (name: string) => {
    if (chosen !== null) return;
    setChosen(name);
    props.answer(name, 1);
  };
  return (
    <CardFrame
      {...props}
      hear={hearing.hearAnswer}
      attributes={{ 'data-notes': verdict ? notesText(heard.notes) : undefined }}
      question="Which variation?"
      hint="The phrase, then a variation of it"
      answers={
        <Paths
          label="Variations"
          paths={card.choices.map(({ name }) => ({ answer: name, content: name }))}
          right={right.name}
          judged={verdict !== null}
          {...{ chosen, choose }}
        />
      }
    >
      {explanation ? (
        <PhraseNeck
          {...props}
          places={right.phrase.notes.map(({ place }) => place!)}
          lit={hearing.lit}
        />
      ) : (
        <HearingButtons hearing={hearing} what="the phrase and its variation" />
      )}
    </CardFrame>
  );
}
