import type { Verdict } from '../../practice/item.ts';
import { numeralLabel, type Naming } from '../../theory/naming.ts';
import { add, beats, subtract } from '../../theory/rhythm.ts';
import { ordinal } from '../../parts/english.ts';
import { degreeDots, type PlacedNote } from '../excerpt/excerpt.ts';
import type { Explanation } from '../kind.ts';
import { numeralAndName } from '../arpeggio/words.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import type { OrderCard } from './ask.ts';
import type { Order } from './orders.ts';

/** Names the arpeggios in their order and where the answer left it; sounds them in either. */
export function explain(
  card: OrderCard,
  verdict: Verdict,
  _answer: string,
  naming: Naming,
): Explanation {
  const { key, phrase, right, excerpt } = card;
  const taken = card.choices.find(({ answer }) => answer === verdict.takenFor);
  const went = right.groups.map(({ chord }) => numeralAndName(chord, naming)).join(', then ');
  return {
    title: orderLabel(right),
    sentence: `It goes ${went}.`,
    detail: taken ? parting(right, taken) : '',
    dots: degreeDots(key, excerpt.notes),
    sound: phraseSound(phrase),
    otherSound: taken ? phraseSound({ ...phrase, notes: inOrder(card, taken) }) : null,
  };
}

/** `ii7 V7 I` */
export function orderLabel({ groups }: Order): string {
  return groups.map(({ chord }) => numeralLabel(chord)).join(' ');
}

function parting(right: Order, taken: Order): string {
  const at = right.groups.findIndex(
    ({ chord }, i) => chord.degree !== taken.groups[i]!.chord.degree,
  );
  const numeral = ({ groups }: Order) => numeralLabel(groups[at]!.chord);
  return `They part at the ${ordinal(at + 1)} arpeggio: it is ${numeral(right)}, not ${numeral(taken)}.`;
}

/** The stretch with its groups in another order, each as long as it was. */
function inOrder({ excerpt: { notes } }: OrderCard, { groups }: Order): PlacedNote[] {
  let end = beats(0);
  return groups.flatMap(({ from, to }) => {
    const start = notes[from]!.at;
    const last = notes[to - 1]!;
    const until = notes[to]?.at ?? add(last.at, last.length);
    const moved = notes
      .slice(from, to)
      .map((note) => ({ ...note, at: add(end, subtract(note.at, start)) }));
    end = add(end, subtract(until, start));
    return moved;
  });
}
