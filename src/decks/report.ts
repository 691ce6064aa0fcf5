/**
 * The report: what a student sends back between two lessons, in a link that a message carries. It names nobody unless
 * a name was typed.
 *
 *     text, UTF-8 (the question, the name, either may be missing) · a zero byte · bits:
 *     deck 32 · sender 32 · day 16 · minute 11 · practised 28 · asked 17 · right 17
 *     kinds 3, for each: median seconds 6
 *     marked 4, for each: item 12, seed 32
 *     items 12, for each: stability 6, and unless that says unseen: days 5, slow 1, misses 2, and where missed: taken for 3
 *
 * An item takes 14 bits, 17 where it was missed lately, 6 where it was never seen.
 */
import { fnv64 } from './bytes.ts';
import { bitReader, bitWriter } from './bits.ts';
import type { BitReader, BitWriter } from './bits.ts';
import { KIND_NAMES } from './deck.ts';
import type { KindName } from './deck.ts';
import { altered, openLink, sealLink } from './envelope.ts';
import type { Fault } from './envelope.ts';

/** What a report tells of one item that was seen. */
export interface ItemFacts {
  /** Days until recall has faded to .9; kept within 8 % from .03 to 400. */
  readonly stability: number;
  /** Days since the last answer; kept within 8 % of half a day more than they are, up to 60. */
  readonly days: number;
  /** Whether it was answered slowly for this student. */
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
  /** Answers on this deck, and how many were right; up to 131,071. */
  readonly asked: number;
  readonly right: number;
  /** Median seconds of a right answer, by kind; kept within 4 % from .5 to 60. */
  readonly seconds: Partial<Readonly<Record<KindName, number>>>;
  /** The deck's items in their order, null where unseen; up to 4,095. */
  readonly items: readonly (ItemFacts | null)[];
  /** Cards that the student marked to ask about, up to 15: the item's place in `items`, and the card's seed. */
  readonly marked: readonly { readonly item: number; readonly seed: number }[];
  /** A question to the teacher, up to 280 characters, and a name, up to 40; may be empty. */
  readonly question: string;
  readonly name: string;
}

const VERSION = 1;
const MOST = { question: 280, name: 40, items: 4095, marked: 15, count: 131_071 };
const PRACTISED = 28;
const UNSEEN = 63;
const NO_SECONDS = 63;
const MOST_MISSES = 3;
const NAME = '\u001f';
const PLAIN = /^(?:[^\p{Cc}\p{Cs}]|\n)*$/u;

const stabilities = logSteps(0.03, 400, UNSEEN);
/** Of days since, with half a day added, so that today is told from yesterday. */
const daysSince = logSteps(0.5, 60.5, 32);
const seconds = logSteps(0.5, 60, NO_SECONDS);

/** The 32 bits by which a report names its deck: `deckId`'s digits, hashed and folded as the hash's authors advise. */
export function deckMark(deckId: string): number {
  const hash = fnv64(new TextEncoder().encode(deckId));
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
  const words = report.name === '' ? report.question : `${report.question}${NAME}${report.name}`;
  const text = new TextEncoder().encode(`${words}\0`);
  const bits = bitWriter();
  putHead(bits, report);
  bits.put(report.marked.length, 4);
  for (const { item, seed } of report.marked) {
    bits.put(item, 12);
    bits.put(seed, 32);
  }
  bits.put(report.items.length, 12);
  for (const item of report.items) putItem(bits, item);
  return sealLink('report', base, VERSION, Uint8Array.of(...text, ...bits.bytes()));
}

/**
 * The report that a link holds, or what is wrong with it and what to do.
 *
 * @param link the whole address, the part after `#`, or the payload alone, as pasted from a message
 */
export function readReport(link: string): { readonly report: Report } | Fault {
  const opened = openLink('report', VERSION, link);
  if ('fault' in opened) return opened;
  const end = opened.body.indexOf(0);
  const bits = bitReader(opened.body.subarray(end + 1));
  const words = new TextDecoder('utf-8', { ignoreBOM: true }).decode(opened.body.subarray(0, end));
  const [question = '', name = '', ...more] = words.split(NAME);

  const head = takeHead(bits);
  const marked = repeat(bits.take(4), () => ({ item: bits.take(12), seed: bits.take(32) }));
  const items = repeat(bits.take(12), () => takeItem(bits));
  const report: Report = { ...head, items, marked, question, name };
  const whole = end >= 0 && more.length === 0 && bits.atEnd() && excess(report) === null;
  return whole ? { report } : { fault: altered('report') };
}

function putHead(bits: BitWriter, report: Report): void {
  bits.put(report.deck, 32);
  bits.put(report.sender, 32);
  bits.put(report.day, 16);
  bits.put(report.minute, 11);
  for (const practised of report.practised) bits.put(Number(practised), 1);
  bits.put(report.asked, 17);
  bits.put(report.right, 17);
  bits.put(KIND_NAMES.length, 3);
  for (const kind of KIND_NAMES) {
    const median = report.seconds[kind];
    bits.put(median === undefined ? NO_SECONDS : seconds.step(median), 6);
  }
}

function takeHead(bits: BitReader) {
  const [deck, sender, day, minute] = [bits.take(32), bits.take(32), bits.take(16), bits.take(11)];
  const practised = repeat(PRACTISED, () => bits.take(1) === 1);
  const [asked, right] = [bits.take(17), bits.take(17)];
  const medians = repeat(bits.take(3), () => bits.take(6));
  const known = KIND_NAMES.flatMap((kind, i): [KindName, number][] => {
    const step = medians[i] ?? NO_SECONDS;
    return step === NO_SECONDS ? [] : [[kind, seconds.value(step)]];
  });
  return { deck, sender, day, minute, practised, asked, right, seconds: Object.fromEntries(known) };
}

function putItem(bits: BitWriter, item: ItemFacts | null): void {
  if (item === null) {
    bits.put(UNSEEN, 6);
    return;
  }
  bits.put(stabilities.step(item.stability), 6);
  bits.put(daysSince.step(0.5 + item.days), 5);
  bits.put(Number(item.slow), 1);
  const misses = Math.min(MOST_MISSES, item.misses);
  bits.put(misses, 2);
  if (misses > 0) bits.put(item.takenFor ?? 0, 3);
}

function takeItem(bits: BitReader): ItemFacts | null {
  const step = bits.take(6);
  if (step === UNSEEN) return null;
  const [days, slow, misses] = [daysSince.value(bits.take(5)), bits.take(1) === 1, bits.take(2)];
  const taken = misses > 0 ? bits.take(3) : 0;
  const takenFor = taken === 0 ? null : taken;
  return { stability: stabilities.value(step), days: days - 0.5, slow, misses, takenFor };
}

/** What a link cannot carry of a report, as a sentence; null where it carries all. */
function excess({ question, name, items, marked, asked, right, practised, minute }: Report) {
  if (question.length > MOST.question) {
    return `Shorten the question to ${MOST.question} characters.`;
  }
  if (name.length > MOST.name) return `Shorten the name to ${MOST.name} characters.`;
  if (!PLAIN.test(question) || !PLAIN.test(name)) return 'Write question and name as plain text.';
  if (items.length > MOST.items) return `A report carries at most ${MOST.items} items.`;
  if (marked.length > MOST.marked) return `Mark at most ${MOST.marked} cards.`;
  if (marked.some(({ item }) => item >= items.length)) return 'Mark cards of this lesson only.';
  if (asked > MOST.count || right > asked)
    return 'A report counts right answers among its answers.';
  if (practised.length !== PRACTISED || minute >= 1440)
    return 'A report covers 28 days to a minute.';
  return null;
}

/** `count` steps from one value to another, each the same factor above the one before it. */
function logSteps(lowest: number, highest: number, count: number) {
  const factor = Math.log(highest / lowest) / (count - 1);
  return {
    step: (value: number) =>
      Math.max(0, Math.min(count - 1, Math.round(Math.log(value / lowest) / factor))),
    value: (step: number) => lowest * Math.exp(factor * Math.min(count - 1, step)),
  };
}

function repeat<T>(times: number, make: () => T): T[] {
  return Array.from({ length: times }, make);
}
