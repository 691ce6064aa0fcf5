/** The attendant over a recording, as the Worker runs it. */
import { Attendant } from '../../src/listening/attendant.ts';
import type { Expected, Performance } from '../../src/listening/listening.ts';
import type { Request, Reply } from '../../src/listening/orders.ts';
import { RATE } from './played.ts';

const BLOCK = 512;
/** Samples in which the opening silence is over. */
const OPENING = 0.55;

/** Gives an order after the opening silence, and all that is told. */
export function toldOf(order: Request, samples: Float32Array, rate = RATE): Reply[] {
  const told: Reply[] = [];
  const attendant = new Attendant(rate, (word) => told.push(word));
  attendant.order({ do: 'silence', id: 0 });
  let ordered = false;
  for (let frame = 0; frame + BLOCK <= samples.length; frame += BLOCK) {
    if (!ordered && frame > OPENING * rate) {
      attendant.order(order);
      ordered = true;
    }
    attendant.hear({ frame, samples: samples.slice(frame, frame + BLOCK) });
  }
  attendant.order({ do: 'finish', id: order.id });
  return told;
}

/** What is made of a recording in which these notes are expected. */
export function heardIn(samples: Float32Array, expected: Expected, rate = RATE): Performance {
  const told = toldOf({ do: 'follow', id: 1, expected }, samples, rate);
  const over = told.findLast((word) => word.told === 'over');
  if (!over) throw new Error('It was never over.');
  return over.performance;
}

/** The words of a performance, a note each: `wrong 61` where another was heard. */
export const words = ({ notes }: Performance): string[] =>
  notes.map((note) =>
    note?.verdict === 'wrong' ? `wrong ${note.heard}` : (note?.verdict ?? 'open'),
  );
