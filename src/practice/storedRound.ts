/** A round as the device keeps it. It comes with the schema library, and only where a round was kept. */
import * as v from 'valibot';
import { LATEST, LONGEST_ID } from '../store/review.ts';
import type { Round } from './round.ts';

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_ID));
const whole = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(LATEST));
const size = v.pipe(v.number(), v.gtValue(0), v.maxValue(1000));

const open = {
  item: id,
  seed: whole,
  isNew: v.boolean(),
  recall: v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
  proven: v.boolean(),
  meet: v.boolean(),
};

const StoredRound = v.object({
  deck: v.string(),
  seed: whole,
  goal: v.union([
    v.literal('enough'),
    v.strictObject({ cards: size }),
    v.strictObject({ minutes: size }),
  ]),
  started: whole,
  lesson: v.nullable(whole),
  meets: v.boolean(),
  asked: v.array(
    v.object({
      ...open,
      right: v.boolean(),
      shown: v.optional(v.boolean(), false),
      takenFor: v.nullable(v.string()),
      given: v.optional(v.nullable(v.string()), null),
      at: whole,
      seconds: v.pipe(v.number(), v.minValue(0)),
    }),
  ),
  open: v.nullable(v.object(open)),
  met: v.array(
    v.object({
      item: id,
      after: v.optional(whole, 0),
      at: whole,
      seconds: v.pipe(v.number(), v.minValue(0)),
    }),
  ),
  owed: v.array(v.object({ item: id, from: whole })),
  pairs: whole,
});

/** A round as it was stored; null where it is none, or not whole. */
export function readRound(stored: unknown): Round | null {
  const read = v.safeParse(StoredRound, stored);
  return read.success ? read.output : null;
}
