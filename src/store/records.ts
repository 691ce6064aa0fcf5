/** What stands in a backup beside the reviews, as it is stored; what documents and links hold is for other rooms to say. */
import * as v from 'valibot';
import { LATEST, LONGEST_ID } from './review.ts';

const whole = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(100));

/** Shared with so many classes no lesson was. */
const MOST_SHARED = 10_000;

/** More than any report takes, characters. */
const LONGEST_LINK = 100_000;

export const deckRecord = v.object({
  id,
  document: v.unknown(),
  added: whole(LATEST),
  away: v.boolean(),
});

export const draftRecord = v.object({
  id,
  document: v.unknown(),
  changed: whole(LATEST),
  away: v.boolean(),
  shared: v.pipe(
    v.array(v.object({ deck: v.string(), at: whole(LATEST) })),
    v.maxLength(MOST_SHARED),
  ),
});

export const reportRecord = v.object({
  sender: whole(0xffffffff),
  deck: whole(0xffffffff),
  day: whole(0xffff),
  minute: whole(1439),
  link: v.pipe(v.string(), v.maxLength(LONGEST_LINK)),
});

export const minuteRecord = v.object({
  lesson: id,
  at: whole(LATEST),
  document: v.unknown(),
});

export const timingRecord = v.object({
  figure: v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_ID)),
  timing: v.unknown(),
});

export const quarantinedRecord = v.object({
  device: v.pipe(v.string(), v.minLength(1)),
  text: v.string(),
  flaw: v.picklist(['torn', 'foreign', 'newer']),
});
