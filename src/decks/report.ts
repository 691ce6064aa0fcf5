/**
 * The report: what a student sends back between two lessons, in a link that a message carries. It names nobody unless
 * a name was typed.
 *
 *     text, UTF-8 (the question, the name, either may be missing) · a zero byte · bits:
 *     deck 32 · sender 32 · day 16 · minute 11 · practised 28 · asked 17 · first asked 17 · of those right 17
 *     kinds 4, for each: whether any was timed 1, and if so the median seconds 6
 *     time and free minutes, see reportTime.ts
 *     items 12 · how fine 2 · to be asked about: how many 4, for each its place 12
 *     for each item how it went lately 5 (0 where it was never asked), and unless that: recall, ease, answers
 *
 * An asked item takes 15 bits. Where a link would pass 500 characters, recall, ease and answers are told more roughly,
 * in 8 bits, in 5, or without ease
 * in 3: so 150 items fit, whatever is told of them, with a question, a name and marks. Packing by odds
 * would save a tenth; that was not worth its code.
 */
import { bitReader, bitWriter } from './bits.ts';
import type { BitReader, BitWriter } from './bits.ts';
import { fnv64 } from './bytes.ts';
import { KIND_NAMES } from './deck.ts';
import type { KindName } from './deck.ts';
import { altered, openLink } from './envelope.ts';
import { sealLink } from './seal.ts';
import type { Fault } from './envelope.ts';
import { NOT_PLAIN, PLAIN_LINES } from './plain.ts';
import { readItemsBefore } from './reportBefore.ts';
import { NO_TIME, putTime, takeTime, type TimeTold } from './reportTime.ts';

/** What a report tells of one item that was asked. */
export interface ItemFacts {
  /** The chance that it is known on the lesson's day, 0 to 1; kept within .017 (.034 or .072 where the link would be too long). */
  readonly recall: number;
  /** How easily it comes to this student, beside their other items, on the logistic scale; kept in steps. Null: not told. */
  readonly ease: number | null;
  /** How many answers stand behind that; kept as 1, 2, 4 or 8, or not at all: 0. */
  readonly answers: number;
  /** Whether it was answered slowly for this student; told only of items not missed lately. */
  readonly slow: boolean;
  /** Wrong ones of the last answers, up to 3. */
  readonly misses: number;
  /** The degree, 1 to 7, that it was most often taken for in those; null where it was no single one. */
  readonly takenFor: number | null;
}

/** What a student sends back. */
export interface Report {
  /** Which deck it is on, as `deckMark` gives it. */
  readonly deck: number;
  /** A number that the student's device drew once, 32 bits: tells one student's reports from another's. */
  readonly sender: number;
  /** When it was made: the local day, counted from 1 January 1970, and the minute of that day. */
  readonly day: number;
  readonly minute: number;
  /** Whether each of the last 28 days had practice in it, the oldest first, `day` last. */
  readonly practised: readonly boolean[];
  /** Answers on this deck; those that were the first to an item on a day, and how many of those were right; up to 131,071. */
  readonly asked: number;
  readonly firstAsked: number;
  readonly firstRight: number;
  /** Median seconds of a right answer, by kind; kept within 4 % from .5 to 60. */
  readonly seconds: Partial<Readonly<Record<KindName, number>>>;
  readonly time: TimeTold;
  /** The deck's items in their order, null where unseen; up to 4,095. */
  readonly items: readonly (ItemFacts | null)[];
  /** Items that the student wants to ask about, up to 15: their places in `items`, ascending. */
  readonly askedAbout: readonly number[];
  /** A question to the teacher, up to 60 characters, and a name, up to 40; may be empty. */
  readonly question: string;
  readonly name: string;
}

/** How much a report may hold: characters, items, items asked about, answers. */
export const MOST_TOLD = { question: 60, name: 40, items: 4095, askedAbout: 15, count: 131_071 };

const VERSION = 4;
/** The first that packed items as they are packed now, and the first that told of time. */
const SINCE = { items: 3, time: 4 };
const PRACTISED = 28;
const NO_SECONDS = 63;
const MOST_MISSES = 3;
const NAME = '\u001f';

/** Bits for an item's recall, ease and answers, the finest first. */
const FINENESS = [
  { recall: 5, ease: 3, answers: 2 },
  { recall: 4, ease: 3, answers: 1 },
  { recall: 3, ease: 2, answers: 0 },
  { recall: 3, ease: 0, answers: 0 },
];
type Fineness = (typeof FINENESS)[number];

/** The steps of ease reach so far to either side of 0. */
const EASE = 1.05;

/** What a link should not pass, characters. */
const LONG = 500;

const seconds = logSteps(0.5, 60, NO_SECONDS);

/** The 32 bits by which a report names its deck: `deckId`'s digits, hashed and folded as the hash's authors advise. */
export function deckMark(deckId: string): number {
  return fold32(deckId);
}

/** The 32 bits by which a report tells its sender: of the device's random id, hashed, so that it cannot be told back. */
export function senderMark(device: string): number {
  return fold32(device);
}

function fold32(text: string): number {
  const hash = fnv64(new TextEncoder().encode(text));
  return Number((hash >> 32n) ^ (hash & 0xffffffffn));
}

/**
 * The link of a report.
 *
 * @param base the page's address, up to `#`
 * @throws RangeError with a sentence where the report holds more than a link carries
 */
export function reportLink(report: Report, base: string): string {
  const fault = excess(report);
  if (fault !== null) throw new RangeError(fault);
  const sealed = (fine: number) => sealLink('report', base, VERSION, pack(report, fine));
  let link = sealed(0);
  for (let fine = 1; fine < FINENESS.length && link.length > LONG; fine++) link = sealed(fine);
  return link;
}

function pack(report: Report, fine: number): Uint8Array {
  const words = report.name === '' ? report.question : `${report.question}${NAME}${report.name}`;
  const text = new TextEncoder().encode(`${words}\0`);
  const bits = bitWriter();
  putHead(bits, report);
  bits.put(report.items.length, 12);
  bits.put(fine, 2);
  bits.put(report.askedAbout.length, 4);
  for (const place of report.askedAbout) bits.put(place, 12);
  for (const item of report.items) putItem(bits, item, FINENESS[fine]!);
  return Uint8Array.of(...text, ...bits.bytes());
}

/**
 * The report that a link holds and the link's own letters, or what is wrong with it and what to do. Of one that was made
 * before ease was told, recall is the one a week later as it was then reckoned.
 *
 * @param link the whole address, the part after `#`, or the payload alone, as pasted from a message
 */
export function readReport(
  link: string,
): { readonly report: Report; readonly payload: string } | Fault {
  const opened = openLink('report', VERSION, link);
  if ('fault' in opened) return opened;
  const end = opened.body.indexOf(0);
  const bits = bitReader(opened.body.subarray(end + 1));
  const words = new TextDecoder('utf-8', { ignoreBOM: true }).decode(opened.body.subarray(0, end));
  const [question = '', name = '', ...more] = words.split(NAME);

  const head = takeHead(bits, opened.version);
  const time = opened.version < SINCE.time ? NO_TIME : takeTime(bits);
  const count = bits.take(12);
  const told = opened.version < SINCE.items ? readItemsBefore(bits, count) : takeItems(bits, count);
  if (end < 0 || more.length > 0 || told === null || time === null)
    return { fault: altered('report') };
  const report: Report = { ...head, ...told, time, question, name };
  return excess(report) === null
    ? { report, payload: opened.payload }
    : { fault: altered('report') };
}

function putHead(bits: BitWriter, report: Report): void {
  bits.put(report.deck, 32);
  bits.put(report.sender, 32);
  bits.put(report.day, 16);
  bits.put(report.minute, 11);
  for (const practised of report.practised) bits.put(Number(practised), 1);
  bits.put(report.asked, 17);
  bits.put(report.firstAsked, 17);
  bits.put(report.firstRight, 17);
  bits.put(KIND_NAMES.length, 4);
  for (const kind of KIND_NAMES) {
    const median = report.seconds[kind];
    bits.put(Number(median !== undefined), 1);
    if (median !== undefined) bits.put(seconds.step(median), 6);
  }
  putTime(bits, report.time);
}

function takeHead(bits: BitReader, version: number) {
  const [deck, sender, day, minute] = [bits.take(32), bits.take(32), bits.take(16), bits.take(11)];
  const practised = repeat(PRACTISED, () => bits.take(1) === 1);
  const asked = bits.take(17);
  // What was told before were all answers and all right ones: nothing of first askings.
  const firsts = [bits.take(17), version < SINCE.items ? 0 : bits.take(17)];
  const [firstAsked, firstRight] = version < SINCE.items ? [0, 0] : (firsts as [number, number]);
  const medians = repeat(bits.take(version === 1 ? 3 : 4), () =>
    version < SINCE.items || bits.take(1) === 1 ? bits.take(6) : NO_SECONDS,
  );
  const known = KIND_NAMES.flatMap((kind, i): [KindName, number][] => {
    const step = medians[i] ?? NO_SECONDS;
    return step === NO_SECONDS ? [] : [[kind, seconds.value(step)]];
  });
  const counts = { asked, firstAsked, firstRight };
  return { deck, sender, day, minute, practised, ...counts, seconds: Object.fromEntries(known) };
}

/**
 * How an item went lately, in one number: 0 never asked; 1 not missed, 2 not missed but slow; from 3 on, for each number
 * of misses, taken for nothing or for one of the seven degrees.
 */
function latelyOf(item: ItemFacts | null): number {
  if (item === null) return 0;
  if (item.misses === 0) return item.slow ? 2 : 1;
  return 3 + 8 * (Math.min(MOST_MISSES, item.misses) - 1) + (item.takenFor ?? 0);
}

function putItem(bits: BitWriter, item: ItemFacts | null, fine: Fineness): void {
  bits.put(latelyOf(item), 5);
  if (item === null) return;
  bits.put(stepOf(item.recall, fine.recall), fine.recall);
  bits.put(stepOf(((item.ease ?? 0) / EASE + 1) / 2, fine.ease), fine.ease);
  const doublings = Math.floor(Math.log2(Math.max(1, item.answers)));
  bits.put(Math.min(2 ** fine.answers - 1, doublings), fine.answers);
}

/** Inverts what is packed after the items' number; null where it is not what would have been packed. */
function takeItems(bits: BitReader, count: number): Pick<Report, 'items' | 'askedAbout'> | null {
  const fine = FINENESS[bits.take(2)];
  const askedAbout = repeat(bits.take(4), () => bits.take(12));
  if (!fine) return null;
  const items = repeat(count, () => takeItem(bits, fine));
  const inOrder = askedAbout.every((place, k) => k === 0 || askedAbout[k - 1]! < place);
  const fits = items.every((item) => item === null || item.misses <= MOST_MISSES);
  return bits.atEnd() && inOrder && fits ? { items, askedAbout } : null;
}

function takeItem(bits: BitReader, fine: Fineness): ItemFacts | null {
  const lately = bits.take(5);
  if (lately === 0) return null;
  const [misses, takenFor] = lately < 3 ? [0, 0] : [1 + ((lately - 3) >> 3), (lately - 3) & 7];
  const recall = bits.take(fine.recall) / (2 ** fine.recall - 1);
  const ease =
    fine.ease === 0 ? null : EASE * ((2 * bits.take(fine.ease)) / (2 ** fine.ease - 1) - 1);
  const answers = fine.answers === 0 ? 0 : 2 ** bits.take(fine.answers);
  return { recall, ease, answers, slow: lately === 2, misses, takenFor: takenFor || null };
}

/** The step nearest to a share from 0 to 1, of as many as so many bits count. */
function stepOf(share: number, bits: number): number {
  const most = 2 ** bits - 1;
  return Math.max(0, Math.min(most, Math.round(share * most)));
}

/** What a link cannot carry of a report, as a sentence; null where it carries all. */
function excess(report: Report): string | null {
  const { question, name, items, askedAbout, practised } = report;
  const most = MOST_TOLD;
  if (question.length > most.question) {
    return `Shorten the question to ${most.question} characters.`;
  }
  if (name.length > most.name) return `Shorten the name to ${most.name} characters.`;
  if (!PLAIN_LINES.test(question) || !PLAIN_LINES.test(name)) {
    return `Write question and name as plain text: ${NOT_PLAIN}.`;
  }
  if (items.length > most.items) return `A report carries at most ${most.items} items.`;
  if (askedAbout.length > most.askedAbout) return `Mark at most ${most.askedAbout} cards.`;
  if (askedAbout.some((item) => item >= items.length)) return 'Mark cards of this lesson only.';
  if (
    report.asked > most.count ||
    report.firstAsked > report.asked ||
    report.firstRight > report.firstAsked
  )
    return 'A report counts right answers among its answers.';
  if (practised.length !== PRACTISED || report.minute >= 1440)
    return 'A report covers 28 days to a minute.';
  return null;
}

/** `count` steps from one value to another, each the same factor above the one before it. */
function logSteps(lowest: number, highest: number, count: number) {
  const factor = Math.log(highest / lowest) / (count - 1);
  const values = Array.from({ length: count }, (_, step) => lowest * Math.exp(factor * step));
  return {
    count,
    step: (value: number) =>
      Math.max(0, Math.min(count - 1, Math.round(Math.log(value / lowest) / factor))),
    value: (step: number) => values[Math.min(count - 1, step)]!,
  };
}

function repeat<T>(times: number, make: (i: number) => T): T[] {
  const made: T[] = [];
  for (let i = 0; i < times; i++) made.push(make(i));
  return made;
}
