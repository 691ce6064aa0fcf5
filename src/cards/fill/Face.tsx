import { useState } from 'preact/hooks';
import { numberWord } from '../../parts/english.ts';
import { Stair } from '../../parts/Stair.tsx';
import { keyLabel } from '../../theory/naming.ts';
import { DEGREES } from '../../theory/scale.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import { notesText } from '../excerpt/excerpt.ts';
import { HearingButtons, useHearing } from '../frame/Hearing.tsx';
import type { FaceProps } from '../kind.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import { useAnyNote } from '../playing/useAnyNote.ts';
import { useQuiet } from '../playing/useQuiet.ts';
import { PhraseNeck } from '../excerpt/PhraseNeck.tsx';
import type { FillCard } from './ask.ts';
import { degreeOfPitch, pitchesOf } from './judge.ts';

/** The key is sounded, then a stretch of the phrase over a click, with a hole in it; which degree is not there? */
export function Face(props: FaceProps<FillCard>) {
  const { card, verdict, explanation, shown } = props;
  const { key, phrase, heard, excerpt, degree } = card;
  const [chosen, setChosen] = useState<number | null>(null);
  const { quiet, sounded } = useQuiet(false, props.sounded);
  const hearing = useHearing({
    ...props,
    sounded,
    asked: phraseSound(heard),
    keyFirst: true,
    how: { click: true },
  });
  const choose = (answer: number, taps = 1) => {
    if (chosen !== null) return;
    setChosen(answer);
    props.answer(String(answer), taps);
  };
  useAnyNote({
    guitar: props.guitar,
    open: quiet && chosen === null && !verdict,
    notes: pitchesOf(card),
    hear(midi) {
      const played = degreeOfPitch(card, midi);
      if (played !== null) choose(played, 0);
    },
    unheard: props.unheard,
  });
  const lookOf = (step: number) => {
    if (verdict && step === degree) return { look: 'right' as const };
    return verdict && step === chosen ? { look: 'wrong' as const } : {};
  };
  return (
    <CardFrame
      {...props}
      hear={hearing.hearAnswer}
      attributes={{ 'data-notes': verdict ? notesText(phrase.notes) : undefined }}
      question="Which degree is missing?"
      hint={`${keyLabel(key, shown.naming)} · ${numberWord(phrase.notes.length)} notes, one left out${props.guitar ? ' · tap it, or play it once' : ''}`}
      answers={
        <Stair
          steps={DEGREES.map((step) => ({ degree: step, numeral: String(step), ...lookOf(step) }))}
          label="Degrees"
          chosen={chosen}
          choose={(step) => choose(step)}
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
