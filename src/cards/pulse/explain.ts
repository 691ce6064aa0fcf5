import type { Verdict } from '../../practice/item.ts';
import { toNumber } from '../../theory/rhythm.ts';
import type { HeldBack, TimeJudgement } from '../../theory/timing/judge.ts';
import type { Explanation } from '../kind.ts';
import type { PulseCard } from './ask.ts';
import { judgementOf } from './judge.ts';
import { evenSound, tappedSound } from './sounds.ts';
import { figureWords } from './words.ts';

const ORDINALS = ['first', 'second', 'third', 'fourth'];
/** So many remarks there is room for under the sentence. */
const REMARKS = 2;

/** Says how even it was, and of shape, drift and single taps what can be known. */
export function explain(card: PulseCard, verdict: Verdict, answer: string): Explanation {
  const judgement = judgementOf(card, answer);
  return {
    ...wordsOf(card, verdict, judgement, answer === ''),
    dots: [],
    sound: evenSound(card),
    otherSound: tappedSound(card, judgement),
  };
}

type Words = Pick<Explanation, 'title' | 'sentence' | 'detail'>;

function wordsOf(
  card: PulseCard,
  verdict: Verdict,
  judgement: TimeJudgement,
  untapped: boolean,
): Words {
  const { tempo } = card.item;
  const { length } = card.plan.slots;
  const title = verdict.right
    ? `Even at ${tempo}`
    : verdict.near
      ? 'Near: once more'
      : 'Not yet even';
  if (untapped && !verdict.near)
    return {
      title,
      sentence: `It is ${length} taps of ${figureWords(card.item)} at ${tempo}.`,
      detail: '',
    };
  if (!judgement.evenness) {
    const { length: met } = judgement.onsets;
    return {
      title: 'Too few taps to tell',
      sentence: `${met} of ${length} taps were on the figure: tap on every note.`,
      detail: 'This counts for nothing, and is asked again.',
    };
  }
  return { title, sentence: sentenceOf(card, judgement), detail: remarks(card, judgement) };
}

function sentenceOf(card: PulseCard, judgement: TimeJudgement): string {
  const { evenness, heldBack, verdict } = judgement;
  const { fraction, finest, range } = evenness!;
  if (heldBack) return `${HELD_BACK[heldBack](judgement, card)}, so it is asked again.`;
  const even = `at most ${percent(card.allowed)} % is even`;
  if (fraction === null) {
    const spread = `Your steps spread by less than ${ms(finest)} ms, as even as can be told here`;
    return verdict === 'near' ? `${spread}; ${even}.` : `${spread}.`;
  }
  const [low, high] = range.map(percent);
  return verdict === 'near'
    ? `Your steps spread by ${low} to ${high} % of a step, and ${even}: too near to say, so it is asked again.`
    : `Your steps spread by ${percent(fraction)} % of a step; ${even}.`;
}

const HELD_BACK: Readonly<Record<HeldBack, (judgement: TimeJudgement, card: PulseCard) => string>> =
  {
    missing: ({ match }, { plan }) =>
      `Even, but ${match.missing.length} of ${plan.slots.length} notes had no tap`,
    extra: ({ match }) => `Even, but ${match.extra.length} taps were too many`,
    tempo: ({ tempo }, { item }) => `Even, but at ${Math.round(tempo!)}, not ${item.tempo}`,
    drift: ({ drift }) => `Even, but you ${drifted(drift!.slope)}`,
  };

/** `ran ahead of the click by 2 %`. */
function drifted(slope: number): string {
  const way = slope < 0 ? 'ran ahead of' : 'fell behind';
  return `${way} the click by ${Math.abs(100 * slope).toFixed(1)} %`;
}

/** What else is sure: the shape of the beat, the drift, the lag, the tap that stands out most. */
function remarks(card: PulseCard, judgement: TimeJudgement): string {
  const { shape, drift, lag, heldBack, worst } = judgement;
  const bent = (shape ?? []).filter(({ told }) => told);
  const notes = bent.map(
    ({ place, late }, i) =>
      `${i === 0 ? 'your' : 'the'} ${ORDINALS[place - 1]} note comes ${off(late)}`,
  );
  const said = [
    ...(notes.length > 0 ? [`${upperFirst(notes.join(', '))}.`] : []),
    ...(drift?.told && heldBack !== 'drift' ? [`You ${drifted(drift.slope)}.`] : []),
    ...(lag?.told
      ? [`You come ${off(lag.change)} on the click, the phone’s delay taken out.`]
      : []),
    ...worst
      .slice(0, 1)
      .map(({ slot, late }) => `${upperFirst(whereOf(card, slot))} came ${off(late)}.`),
  ];
  return said.slice(0, REMARKS).join(' ');
}

/** `the second note of beat 3 in bar 2`. */
function whereOf({ plan }: PulseCard, slot: number): string {
  const { bar } = plan.figure;
  const beatOf = (one: number) => Math.floor(toNumber(plan.slots[one]!.at) + 1e-9);
  const beat = beatOf(slot);
  const where = `beat ${(beat % bar) + 1} in bar ${Math.floor(beat / bar) + 1}`;
  const inBeat = plan.slots.flatMap((_, one) => (beatOf(one) === beat ? [one] : []));
  return inBeat.length === 1 ? where : `the ${ORDINALS[inBeat.indexOf(slot)]} note of ${where}`;
}

/** `18 ms early`. */
function off(late: number): string {
  return `${ms(Math.abs(late))} ms ${late < 0 ? 'early' : 'late'}`;
}

const ms = (seconds: number) => Math.round(1000 * seconds);
const percent = (fraction: number) => Math.round(100 * fraction);

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
